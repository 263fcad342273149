import { CATALOGUE } from '../../catalogue';
import { register } from './register';

// Where office.js did not load there is nobody to tell; the pane says so.
if (typeof CustomFunctions !== 'undefined') register(CustomFunctions, CATALOGUE);
