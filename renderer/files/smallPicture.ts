import { bytesFromBase64 } from '../api/saveFile.ts';

/** Longest side of a small picture, in pixels: sharp at the size it is shown in, on any screen. */
const LONGEST_SIDE = 192;

/** The data address of a picture's bytes. */
export const dataAddress = (mediaType: string, base64: string): string =>
  `data:${mediaType};base64,${base64}`;

/** A small JPEG of a picture, in base64; null when the browser cannot draw the picture. */
export async function smallPictureOf(base64: string, mediaType: string): Promise<string | null> {
  try {
    const picture = await createImageBitmap(
      new Blob([bytesFromBase64(base64)], { type: mediaType }),
    );
    const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    const pen = canvas.getContext('2d')!;
    // JPEG has no clear ground; without this, a drawing on none would turn black.
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    return canvas.toDataURL('image/jpeg', 0.8).split(',')[1]!;
  } catch {
    return null;
  }
}
