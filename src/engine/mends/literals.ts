/**
 * In 0.25.1 a number that is not spelt as JavaScript would print it is a text: 1.50, .5, 007, 1E3 and more than seventeen
 * digits, in formulas, in criteria and where a formula is nothing else. What reads as a number is one. The place is the
 * factory that every value of a formula passes, which is reached no other way.
 */
import { NumberValueObject, ValueObjectFactory } from '@univerjs/engine-formula';
import { isNumberText } from './coerce';

const create = ValueObjectFactory.create.bind(ValueObjectFactory);
ValueObjectFactory.create = (raw, ...rest) =>
  typeof raw === 'string' && isNumberText(raw) && Number.isFinite(Number(raw))
    ? NumberValueObject.create(Number(raw))
    : create(raw, ...rest);
