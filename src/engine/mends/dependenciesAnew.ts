/**
 * Before each calculation the engine (0.25.1) notes anew which cells each formula reads, beside all that it noted before: after
 * a hundred edits it knows of each cell a hundred times that a formula reads it, and looks through all of them. It also goes on
 * knowing what a formula has read that says something else by now. Here it forgets first, as it does by itself where it is told to
 * calculate everything.
 */
import { FormulaDependencyGenerator, type IDependencyManagerService } from '@univerjs/engine-formula';
import { replaceMethod } from './replaceMethod';

replaceMethod<unknown[], unknown>(
  FormulaDependencyGenerator.prototype,
  '_generateTreeList',
  (generate) =>
    function (...args) {
      const { _dependencyManagerService: noted } = this as {
        readonly _dependencyManagerService: IDependencyManagerService;
      };
      noted.reset();
      return generate.apply(this, args);
    },
);
