import type { FUniver } from '@univerjs/core/facade';

/** Settles once the grid has drawn its first answers. Call it as soon as the workbook is made. */
export async function firstAnswersShown(api: FUniver): Promise<void> {
  await Promise.all([firstDrawn(api), nextAnswers(api)]);
  await nextFrame();
  await nextFrame();
}

/** Settles once the grid is drawn, whether there are answers or not. Call it as soon as the workbook is made. */
export async function firstDrawn(api: FUniver): Promise<void> {
  await rendered(api);
  await nextFrame();
}

const rendered = (api: FUniver): Promise<void> =>
  new Promise((resolve) => {
    api.addEvent(api.Event.LifeCycleChanged, ({ stage }) => {
      if (stage === api.Enum.LifecycleStages.Rendered) resolve();
    });
  });

/** Settles when the next calculation has reached the cells. */
export const nextAnswers = (api: FUniver): Promise<void> =>
  new Promise((resolve) => {
    const listener = api.getFormula().calculationResultApplied(() => {
      listener.dispose();
      resolve();
    });
  });

const nextFrame = (): Promise<number> => new Promise(requestAnimationFrame);
