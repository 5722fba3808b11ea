import type { Page } from 'playwright-core';

/**
 * Controls whose name leaves out what is seen of them (WCAG 2.2, 2.5.3 Label in Name), or that have none: who speaks to
 * the page says what stands there. Signs do not count, and a measure counts as it is spoken.The inside of a picture
 * is no label, nor is a specimen of a font.
 */
export const misnamed = (page: Page, root = 'body'): Promise<string[]> =>
  page.evaluate((within) => {
    const CONTROLS =
      'button, a[href], summary, label, [role=tab], [role=radio], [role=treeitem], [role^=menuitem], [role=option]';
    const SPOKEN = '.spoken-only';
    const SPECIMEN = '.font-sample';
    const plain = (text: string) =>
      text
        .toLowerCase()
        .replace(/[^\p{L}\p{N}/]+/gu, ' ')
        .trim();
    const isSet = (el: Element) => el.previousElementSibling?.matches(SPOKEN) === true;
    /** The text of an element: as it is seen, or as it is spoken. */
    const textOf = (el: Element, seen: boolean): string =>
      [...el.childNodes]
        .map((node) => {
          if (node instanceof Text) return node.data;
          if (!(node instanceof HTMLElement) || node.matches(`select, ${SPECIMEN}`)) return '';
          const style = getComputedStyle(node);
          if (style.display === 'none' || style.visibility === 'hidden') return '';
          const hidden = style.position === 'absolute' && node.getBoundingClientRect().width <= 1;
          if (seen ? isSet(node) || (hidden && !node.matches(SPOKEN)) : node.ariaHidden === 'true') return '';
          const text = (!seen && node.ariaLabel) || textOf(node, seen);
          return style.display === 'inline' ? text : ` ${text} `;
        })
        .join('');
    const nameOf = (el: Element): string => {
      const named = el instanceof HTMLLabelElement ? el.control : el;
      const by = named?.getAttribute('aria-labelledby')?.split(' ') ?? [];
      if (by.length > 0) return by.map((id) => document.getElementById(id)?.textContent ?? '').join(' ');
      return named?.ariaLabel ?? textOf(el, false);
    };
    return [...document.querySelectorAll(`${within} :is(${CONTROLS})`)]
      .filter((el) => el.checkVisibility() && !(el instanceof HTMLLabelElement && !el.control))
      .flatMap((el) => {
        const [seen, name] = [plain(textOf(el, true)), plain(nameOf(el))];
        return name !== '' && name.includes(seen) ? [] : [`“${seen}” is seen of “${name}”`];
      });
  }, root);
