import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { begin, end, hasFailed } from '../../../src/hosts/workbench/state/attempts';

let leave: EventTarget;
beforeEach(() => {
  const kept = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
    removeItem: (key: string) => kept.delete(key),
  });
  leave = new EventTarget();
  vi.stubGlobal('addEventListener', leave.addEventListener.bind(leave));
  vi.stubGlobal('removeEventListener', leave.removeEventListener.bind(leave));
});
afterEach(() => {
  end();
  vi.unstubAllGlobals();
});

test('two pages that ended while they opened the workbook have failed, and one proves nothing', () => {
  begin();
  expect(hasFailed()).toBe(false);
  begin();
  expect(hasFailed()).toBe(true);
});

test('a page that has shown it begins the count anew', () => {
  begin();
  begin();
  end();
  begin();
  expect(hasFailed()).toBe(false);
});

test('a page that was left on purpose has not failed', () => {
  begin();
  leave.dispatchEvent(new Event('pagehide'));
  begin();
  expect(hasFailed()).toBe(false);
});

test('nothing fails where storage is forbidden', () => {
  const forbidden = (): never => {
    throw new DOMException('Forbidden here.', 'SecurityError');
  };
  vi.stubGlobal('localStorage', { getItem: forbidden, setItem: forbidden, removeItem: forbidden });
  begin();
  begin();
  expect(hasFailed()).toBe(false);
});
