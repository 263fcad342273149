import { onVisibility } from './visibility';

/**
 * Takes light or dark from Office, where Office tells it; elsewhere the system's choice stands.
 * Only the choice is taken: the pane's own colours are known to be legible together, a mixture would not be.
 */
function followOfficeTheme(): void {
  // Excel on the web and older versions leave the theme out, whatever the types say.
  const theme = Office.context.officeTheme as Office.OfficeTheme | undefined;
  if (!theme?.bodyBackgroundColor) return;
  document.documentElement.dataset.theme = isDark(theme.bodyBackgroundColor) ? 'dark' : 'light';
}

/** Excel tells no change of its theme to a pane; one that was closed meanwhile looks again. */
export function keepToOfficeTheme(): void {
  followOfficeTheme();
  onVisibility((isVisible) => {
    if (isVisible) followOfficeTheme();
  });
}

/** Whether a colour such as #1f1f1f is nearer to black than to white, to the eye. */
function isDark(colour: string): boolean {
  const [red = 0, green = 0, blue = 0] = (colour.match(/[\da-f]{2}/gi) ?? []).map((part) =>
    parseInt(part, 16),
  );
  return 0.299 * red + 0.587 * green + 0.114 * blue < 128;
}
