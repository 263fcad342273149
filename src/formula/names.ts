import { NAMESPACE } from '../catalogue';

/** What the names of our functions begin with. */
export const OURS = `${NAMESPACE}.`;
export const isOurs = (name: string): boolean => name.startsWith(OURS);
