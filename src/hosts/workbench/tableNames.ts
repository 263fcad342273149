import { ReferenceNodeFactory } from '@univerjs/engine-formula';

interface Insides {
  _checkTokenIsTableReference(token: string): boolean;
  _getTableMap(): ReadonlyMap<string, unknown> | undefined;
}

/**
 * The engine takes no name with an underscore or a dot for a table: =SUM(Lights_2[Light]) gives #NAME?. What stands
 * before the bracket is a table if there is a table of that name. Import it in each thread that calculates.
 */
const factory = ReferenceNodeFactory.prototype as unknown as Insides;
const { _checkTokenIsTableReference: isTable } = factory;
factory._checkTokenIsTableReference = function (token) {
  return isTable.call(this, token) || this._getTableMap()?.has(token.split('[', 1)[0] as string) === true;
};
