const NAME = '[data-u-comp="defined-name"] input';

/** A click into the field that names the chosen cell chooses all of it, so that another name is typed over it and not behind it. */
export function chooseNameWhole(): void {
  let comes = false;
  const nameIn = ({ target }: Event): HTMLInputElement | undefined =>
    target instanceof HTMLInputElement && target.matches(NAME) ? target : undefined;
  addEventListener('focusin', (event) => {
    comes = nameIn(event) !== undefined;
  });
  addEventListener('click', (event) => {
    if (comes) nameIn(event)?.select();
    comes = false;
  });
}
