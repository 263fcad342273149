import { JOB } from './byUse';
import { TOPS, templateOf } from './offeredTemplates';
import type { Template } from './template';

/** The sheet that the pane asks for; nothing where there is no such sheet; or a refusal where it does not arrive. */
export async function templateToLay(
  id: string,
): Promise<Template | { readonly refused: string } | undefined> {
  try {
    return await templateOf(id);
  } catch {
    const name = TOPS.find((top) => top.id === id)?.name ?? id;
    return {
      refused: `The sheet “${name}” did not arrive. Nothing was changed. Check the connection, then try again.`,
    };
  }
}

/** The sheets of a job, in the order in which they are laid; or a refusal where one of them does not arrive. */
export async function jobToLay(): Promise<readonly Template[] | { readonly refused: string }> {
  const job: Template[] = [];
  for (const template of await Promise.all(JOB.map(templateToLay))) {
    if (!template) throw new Error('A sheet of the job has no template.');
    if ('refused' in template) return template;
    job.push(template);
  }
  return job;
}
