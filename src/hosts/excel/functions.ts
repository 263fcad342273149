import { CATALOGUE } from '../../catalogue';
import { register } from './register';

register(CustomFunctions, CATALOGUE);
