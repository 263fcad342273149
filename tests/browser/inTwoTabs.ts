import { expect } from 'vitest';
import type { Workbench } from './workbench';

export const ELSEWHERE = /is open in another tab, and only that one is stored/;

/** What stands above the grid of a tab for as long as it holds. */
export const says = (tab: Workbench) => expect.poll(() => tab.standing.innerText());
