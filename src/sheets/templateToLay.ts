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
