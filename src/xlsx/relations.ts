import type { Package } from './zip';
import { treeOf } from './xml';

export interface Relation {
  readonly id: string;
  /** The last word of its type: "worksheet", "table", "comments", … */
  readonly type: string;
  /** Name of the part; undefined where it points out of the file. */
  readonly part: string | undefined;
}

/** What a part of a file refers to. */
export async function relationsOf(file: Package, part: string): Promise<readonly Relation[]> {
  const cut = part.lastIndexOf('/') + 1;
  const folder = part.slice(0, cut);
  const root = await treeOf(file, `${folder}_rels/${part.slice(cut)}.rels`);
  if (!root) return [];
  return root.children.map(({ attributes: { Id = '', Type = '', Target = '', TargetMode } }) => ({
    id: Id,
    type: Type.slice(Type.lastIndexOf('/') + 1),
    part: TargetMode === 'External' ? undefined : resolved(folder, Target),
  }));
}

function resolved(folder: string, target: string): string {
  const path: string[] = [];
  for (const step of (target.startsWith('/') ? target : folder + target).split('/')) {
    if (step === '..') path.pop();
    else if (step !== '' && step !== '.') path.push(step);
  }
  return path.join('/');
}
