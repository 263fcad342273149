import { defaultTheme, type Theme } from '@univerjs/themes';

/** The grid's own buttons, menus, selection and grounds in our colours. */
export const GRID_THEME: Theme = {
  ...defaultTheme,
  // the last ones are its grounds on a dark page, and letters on a light one
  gray: {
    ...defaultTheme.gray,
    600: '#4a5865',
    700: '#3b4853',
    800: '#232e38',
    900: '#1b242c',
  },
  primary: {
    50: '#eef7f5',
    100: '#dcefec',
    200: '#b9dfda',
    300: '#88cfc7',
    400: '#4fa9a1',
    500: '#2d8b84',
    600: '#1f7772',
    700: '#17635f',
    800: '#124f4c',
    900: '#0e3f3d',
  },
};
