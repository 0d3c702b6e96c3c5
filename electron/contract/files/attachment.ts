/** What a file at a visit is; a photo by the side it was taken from, where that is told. */
export const ATTACHMENT_KINDS = [
  'photo',
  'photo from the left',
  'photo from the right',
  'photo from above',
  'photo from the front',
  'photo from behind',
  'letter of the vet',
  'other',
] as const;
export type AttachmentKind = (typeof ATTACHMENT_KINDS)[number];

/**
 * The types of content that are taken, told by the bytes, and the
 * endings of their names, the usual one first; a recording only for an owner who asks for it.
 */
export const ATTACHMENT_TYPES = {
  'image/jpeg': ['jpg', 'jpeg'],
  'image/png': ['png'],
  'image/webp': ['webp'],
  'application/pdf': ['pdf'],
  'application/gpx+xml': ['gpx'],
} as const;
export type AttachmentType = keyof typeof ATTACHMENT_TYPES;
export const MEDIA_TYPES = Object.keys(ATTACHMENT_TYPES) as [AttachmentType, ...AttachmentType[]];

/** The type of a recorded run. */
export const RECORDING: AttachmentType = 'application/gpx+xml';
/** True for what can be drawn as a picture. */
export const isPicture = (type: AttachmentType): boolean => type.startsWith('image/');

/** Our own limits (mark D); the size of one file stands in filePurposes.ts. */
export const ATTACHMENT_LIMITS = { perVisit: 30, thumbnailBytes: 48 * 1024 } as const;

/** A photo, a letter or another file kept at a visit. */
export interface Attachment {
  readonly id: string;
  readonly visitId: string;
  readonly kind: AttachmentKind;
  readonly name: string;
  readonly mediaType: AttachmentType;
  readonly bytes: number;
  /** A small picture as a data address; null where there is none. */
  readonly thumbnail: string | null;
  /** True when its content is not in the folder of records; a backup may have it. */
  readonly missing: boolean;
  /** Initials of who added it; empty where the practice has one practitioner. */
  readonly author: string;
  readonly createdAt: string;
}

/** A file that was taken in, looked at before it is kept. */
export interface FileLook {
  readonly mediaType: AttachmentType;
  /** The picture as it would be kept, for making a small one of it; null for what is none. */
  readonly base64: string | null;
}

/** The content of an attachment, to be shown on the page. */
export interface AttachmentContent {
  readonly name: string;
  readonly mediaType: AttachmentType;
  readonly base64: string;
}

/** A file chosen at a new visit, kept until the visit is saved and then added to it. */
export interface WaitingFile extends Pick<
  Attachment,
  'kind' | 'name' | 'mediaType' | 'bytes' | 'thumbnail' | 'missing'
> {
  /** SHA-256 of its content; tells the waiting files of a dog apart. */
  readonly hash: string;
  /** True where it was taken out again: it is not added, and goes for good with the save. */
  readonly leftOut: boolean;
  /** When it was chosen; UTC instant, ISO text. */
  readonly chosenAt: string;
}
