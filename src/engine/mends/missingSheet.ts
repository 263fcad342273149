/**
 * A reference to a sheet that is not there is #VALUE! in 0.25.1, and to functions that ask for cells it is no error at all:
 * COUNTIF(Missing!A1:A9,1) is 0. Microsoft's "How to correct a #REF! error" has #REF! for what a formula names and is not there.
 *
 * For @univerjs/engine-formula 0.25.1.
 */
import { BaseReferenceObject, ErrorType, ReferenceNodeFactory } from '@univerjs/engine-formula';
import { failed } from './nativeFunction';
import { replaceMethod } from './replaceMethod';
import type { TreeNode } from './reading/nodes';

const isMissing = (value: unknown): boolean =>
  value instanceof BaseReferenceObject &&
  (value as unknown as { _checkIfWorksheetMiss(): boolean })._checkIfWorksheetMiss();

replaceMethod<unknown[], TreeNode | undefined>(
  ReferenceNodeFactory.prototype,
  '_getNode',
  (original) =>
    function (...args) {
      const node = original.apply(this, args);
      if (!node) return node;
      const { execute } = node;
      node.execute = function () {
        execute.call(this);
        if (isMissing(this.getValue())) this.setValue(failed(ErrorType.REF));
      };
      return node;
    },
);
