import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { NAMESPACE } from '../../src/catalogue';
import { LOCAL_ORIGIN } from '../../src/hosts/excel/metadata';

type Look = (name: string) => Buffer | undefined;
const { inSources, manifestFaults } = createRequire(import.meta.url)(
  '../../src/build/manifest-rules.cjs',
) as {
  inSources: (root: string) => Look;
  manifestFaults: (xml: string, look: Look) => string[];
};

const xml = readFileSync('manifest.xml', 'utf8');
const sources = inSources(resolve('.'));

/** The manifest with one thing changed; the change must be one. */
function changed(from: string | RegExp, to: string): string {
  const text = xml.replace(from, to);
  if (text === xml) throw new Error(`nothing to change: ${String(from)}`);
  return text;
}

test('the manifest is in order, and every file it names has a source', () =>
  expect(manifestFaults(xml, sources)).toEqual([]));

test('the manifest stays in order when it is built for another address', () => {
  expect(manifestFaults(xml.replaceAll(LOCAL_ORIGIN, 'https://studio.example/sweep/'), sources)).toEqual([]);
});

test('it calls the functions as the catalogue does', () => {
  expect(xml).toContain(`<bt:String id="Functions.Namespace" DefaultValue="${NAMESPACE}"/>`);
});

const broken: [string, string, string][] = [
  ['an Id that is no GUID', changed(/<Id>.*<\/Id>/, '<Id>sweeptable</Id>'), 'Id is no GUID'],
  ['a version of five parts', changed(/<Version>.*</, '<Version>1.0.0.0.0<'), 'Version is not'],
  ['no support page', changed(/<SupportUrl.*>/, ''), 'no SupportUrl'],
  ['a support page that is not built', changed('/support.html"', '/help-desk.html"'), 'no such file: help-desk.html'],
  ['a page without https', changed('SourceLocation DefaultValue="https:', 'SourceLocation DefaultValue="http:'), 'not an https address'],
  ['an icon without https', changed('Icon.16" DefaultValue="https:', 'Icon.16" DefaultValue="http:'), 'not an https address'],
  ['a reference to nothing', changed('<Namespace resid="Functions.Namespace"', '<Namespace resid="Nowhere"'), 'no resource is called Nowhere'],
  ['a resource that nothing uses', changed('</bt:Urls>', '<bt:Url id="Idle" DefaultValue="https://localhost:3000/help.html"/></bt:Urls>'), 'nothing uses the resource Idle'],
  ['two resources of one name', changed('bt:Url id="Help.Url"', 'bt:Url id="Pane.Url"'), 'two resources are called Pane.Url'],
  ['a name of 33 characters', xml.replaceAll('Help.Url', 'H'.repeat(33)), 'longer than 32 characters'],
  ['a long short text', changed('DefaultValue="Sweeptable is ready"', `DefaultValue="${'s'.repeat(126)}"`), 'longer than 125 characters'],
  ['a long long text', changed(/DefaultValue="Type =SWEEP[^"]*"/, `DefaultValue="${'s'.repeat(251)}"`), 'longer than 250 characters'],
  ['a runtime of another page', changed('<Runtime resid="Pane.Url"', '<Runtime resid="Help.Url"'), 'do not name one resource'],
  ['functions of another page', changed(/(<Page>\s*<SourceLocation resid=)"Pane.Url"/, '$1"Help.Url"'), 'do not name one resource'],
  ['a button for another page', changed(/(<\/TaskpaneId>\s*<SourceLocation resid=)"Pane.Url"/, '$1"Help.Url"'), 'do not name one resource'],
  ['no shared runtime', changed(/<Runtimes>[\s\S]*<\/Runtimes>/, ''), 'do not name one resource'],
  ['another start page', changed('SourceLocation DefaultValue="https://localhost:3000/taskpane', 'SourceLocation DefaultValue="https://localhost:3000/help'), 'starts another page'],
  ['no word on the shared runtime', changed(/<Set Name="SharedRuntime".*>/, ''), 'does not ask for SharedRuntime 1.1'],
  ['an older level of custom functions', changed('CustomFunctionsRuntime" MinVersion="1.3"', 'CustomFunctionsRuntime" MinVersion="1.1"'), 'CustomFunctionsRuntime 1.3'],
  ['an older level of Excel', changed('ExcelApi" MinVersion="1.9"', 'ExcelApi" MinVersion="1.7"'), 'ExcelApi 1.9'],
  ['a script that is not built', changed('functions.js"', 'function.js"'), 'no such file: function.js'],
  ['an icon of another size', changed('id="Icon.80" DefaultValue="https://localhost:3000/icons/icon-80', 'id="Icon.80" DefaultValue="https://localhost:3000/icons/icon-64'), 'not a PNG of 80 by 80'],
  ['a small icon for sharp screens', changed('HighResolutionIconUrl DefaultValue="https://localhost:3000/icons/icon-64', 'HighResolutionIconUrl DefaultValue="https://localhost:3000/icons/icon-32'), 'not a PNG of 64 by 64'],
  ['a page on another site', changed('Help.Url" DefaultValue="https://localhost:3000/', 'Help.Url" DefaultValue="https://other.example/'), 'not under https://localhost:3000/'],
]; // prettier-ignore
test.each(broken)('the rules refuse %s', (_what, text, fault) => {
  expect(manifestFaults(text, sources).join('\n')).toContain(fault);
});

test('the rules refuse an icon that is no picture', () => {
  const look: Look = (name) =>
    name.endsWith('.png') ? Buffer.from('no picture, though its name says so') : sources(name);
  expect(manifestFaults(xml, look)).toContain('not a PNG of 16 by 16: icons/icon-16.png');
});

test('a resource that stands in a comment counts as none', () => {
  const text = changed(/(<bt:Url id="Help.Url".*>)/, '<!-- $1 -->');
  expect(manifestFaults(text, sources)).toContain('no resource is called Help.Url');
});
