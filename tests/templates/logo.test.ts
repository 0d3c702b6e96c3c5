import { describe, expect, it } from 'vitest';
import { checkLogo, LOGO_MAX_BYTES, LOGO_MAX_PIXELS } from '../../templates/logo.ts';
import { png } from './support/logos.ts';

const svg = (inside: string, attributes = 'viewBox="0 0 10 10"') =>
  new TextEncoder().encode(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`);
const problem = (bytes: Uint8Array) => {
  const result = checkLogo(bytes);
  return result.ok ? '' : result.problem;
};

describe('logo check', () => {
  it('takes PNG, JPEG and plain SVG by their content', () => {
    const jpeg = new Uint8Array([
      0xff, 0xd8, 0xff, 0xe0, 0, 4, 0, 0, 0xff, 0xc0, 0, 11, 8, 0, 20, 0, 40, 1, 1, 0x11, 0,
    ]);
    expect(checkLogo(png(40, 20))).toMatchObject({ ok: true, logo: { mediaType: 'image/png' } });
    expect(checkLogo(jpeg)).toMatchObject({ ok: true, logo: { mediaType: 'image/jpeg' } });
    expect(checkLogo(svg('<path d="M0 0h10v10z" fill="#123456"/>'))).toMatchObject({
      ok: true,
      logo: { mediaType: 'image/svg+xml' },
    });
  });

  it('takes an SVG with an XML line and a comment before it', () => {
    const text = '<?xml version="1.0"?>\n<!-- drawn by hand --><svg viewBox="0 0 1 1"></svg>';
    expect(checkLogo(new TextEncoder().encode(text)).ok).toBe(true);
  });

  it('refuses what is empty, too heavy, too large or no picture', () => {
    expect(problem(new Uint8Array())).toMatch(/empty/);
    expect(problem(new Uint8Array(LOGO_MAX_BYTES + 1))).toMatch(/at most 512 kB/);
    expect(problem(png(LOGO_MAX_PIXELS + 1, 1))).toMatch(/4000 pixels/);
    expect(problem(new TextEncoder().encode('hello'))).toMatch(/PNG, JPEG or SVG/);
    expect(problem(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]))).toMatch(
      /damaged/,
    );
  });

  it.each([
    ['an image', '<image href="file:///etc/hostname"/>'],
    ['a script', '<script>1</script>'],
    ['foreign content', '<foreignObject/>'],
    ['a style sheet', '<style>@import url(x)</style>'],
    ['reuse', '<use href="#a"/>'],
    ['a link on a shape', '<path xlink:href="http://a.example"/>'],
    ['an event', '<path onclick="x"/>'],
    ['an outside fill', '<path fill="url(http://a.example/#g)"/>'],
    ['a masked outside fill', '<path fill="url(&#104;ttp://a.example)"/>'],
    ['a nested declaration', '<!DOCTYPE svg [<!ENTITY a "b">]>'],
    ['a processing instruction', '<?xml-stylesheet href="x"?>'],
  ])('refuses an SVG with %s', (_, inside) => {
    expect(checkLogo(svg(inside)).ok).toBe(false);
  });

  it('refuses an SVG that does not say its size', () => {
    expect(problem(svg('', ''))).toMatch(/size/);
  });
});
