import type { ManifestOptions } from 'vite-plugin-pwa';

/** How the tool presents itself where it is installed; colors are the paper and ink of `style/tokens.css`. */
export const MANIFEST: Partial<ManifestOptions> = {
  id: './',
  name: 'Showface',
  short_name: 'Showface',
  description:
    'Plan the face of a fold-up wall bed: layout, checks, cut lengths, paint and lettering patterns.',
  lang: 'en-US',
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: '#eceee4',
  theme_color: '#eceee4',
  categories: ['productivity', 'utilities'],
  icons: [
    { src: './icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
    { src: './icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
    { src: './icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
    { src: './icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
  ],
  shortcuts: [{ name: 'Pieces at the saw', url: './#bench' }],
};
