/** How Excel numbers its events on the wire. */
const NUMBERS = { change: 10, calculation: 16 } as const;
const EVENT_MESSAGE = 65536;

export type ExcelEvent = keyof typeof NUMBERS;

/** What Excel sends to the library when something was typed or calculated anywhere in the workbook. */
export const eventMessage = (event: ExcelEvent): object => ({
  entries: [{ messageCategory: EVENT_MESSAGE, messageType: NUMBERS[event], targetId: 'Workbook', message: '{}' }], // prettier-ignore
});
