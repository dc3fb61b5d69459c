import { store } from './client';

/** The bytes of a picture, which never change; null where there is no such picture. */
export async function pictureFile(
  id: string,
): Promise<{ mediaType: string; bytes: Uint8Array<ArrayBuffer> } | null> {
  const { prisma } = await store();
  return prisma.picture.findUnique({ where: { id }, select: { mediaType: true, bytes: true } });
}
