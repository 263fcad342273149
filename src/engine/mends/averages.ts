/** The functions that count texts count each as 0, also "2", which 0.25.1 takes for 2. Microsoft's help of AVERAGEA says so. */
import { type BaseValueObject, NumberValueObject } from '@univerjs/engine-formula';
import { isArray, type Mended, replaced, rewired } from './objects';

const ZERO = NumberValueObject.create(0);
const textsAsZero = (value: BaseValueObject): BaseValueObject =>
  isArray(value) ? replaced(value, (each) => (each.isString() ? ZERO : each)) : value;

export const AVERAGES: readonly Mended[] = ['AVERAGEA', 'STDEVA', 'STDEVPA', 'VARA', 'VARPA'].map((name) =>
  rewired(name, (values) => values.map(textsAsZero)),
);
