/**
 * On a bare Linux the browser calls its language en-US@posix, which is no language tag, and the chart library stops at it
 * when it is loaded. Imported before that library.
 */
const IS_TAG = /^[a-z]{2,8}(?:-[a-z0-9]{1,8})*$/i;

if (!IS_TAG.test(navigator.language))
  Object.defineProperty(navigator, 'language', { value: 'en', configurable: true });
