import fc from 'fast-check';
import { runs } from './full';

fc.configureGlobal({ numRuns: runs(100) });
