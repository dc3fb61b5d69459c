/** Whether a click on a page is heard by what listens on it; `detail` is 0 where nothing was pressed. */
export function isHeard(page: EventTarget, detail: number): boolean {
  let heard = false;
  const hear = () => {
    heard = true;
  };
  page.addEventListener('click', hear);
  const click = Object.assign(new Event('click', { cancelable: true }), { detail });
  page.dispatchEvent(click);
  page.removeEventListener('click', hear);
  if (heard === click.defaultPrevented) throw new Error('heard, and yet prevented, or neither');
  return heard;
}
