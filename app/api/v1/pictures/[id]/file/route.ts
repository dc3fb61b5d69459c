import { routeOf } from '@/app/api/route-of';
import { problem } from '@/lib/http/problem';
import { Id } from '@/lib/schema/common';
import { pictureFile } from '@/lib/store/picture-file';

/** The bytes of a picture. Whatever is in the file, a browser may only show it as the picture it is. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  async GET({ params }) {
    const id = Id.safeParse(params['id']);
    const file = id.success ? await pictureFile(id.data) : null;
    if (file === null) return problem('no-such-thing');
    return new Response(file.bytes, {
      headers: {
        'content-type': file.mediaType,
        'content-length': String(file.bytes.length),
        'content-disposition': 'inline',
        'content-security-policy': "default-src 'none'; sandbox",
        'x-content-type-options': 'nosniff',
        'cache-control': 'private, max-age=31536000, immutable',
      },
    });
  },
});
