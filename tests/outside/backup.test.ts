import { createCipheriv } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { COST, stretch } from '../../electron/service/passphrase.ts';

const hex = (text: string): Buffer => Buffer.from(text.replaceAll(/\s/g, ''), 'hex');

describe('passphrases are stretched as RFC 7914 says', () => {
  // RFC 7914 (Percival, Josefsson 2016), section 12, the vectors that fit into memory here. Mark S,
  // read as quoted in the test suites of two scrypt libraries.
  test.each([
    {
      passphrase: 'password',
      salt: 'NaCl',
      cost: { log2N: 10, r: 8, p: 16 },
      key: `fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b373162
            2eaf30d92e22a3886ff109279d9830dac727afb94a83ee6d8360cbdfa2cc0640`,
    },
    {
      passphrase: 'pleaseletmein',
      salt: 'SodiumChloride',
      cost: { log2N: 14, r: 8, p: 1 },
      key: `7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2
            d5432955613f0fcf62d49705242a9af9e61e85dc0d651e40dfcf017b45575887`,
    },
  ])('$passphrase with $salt', async ({ passphrase, salt, cost, key }) => {
    expect(await stretch(passphrase, Buffer.from(salt), 64, cost)).toEqual(hex(key));
  });

  // OWASP Password Storage Cheat Sheet: "a minimum CPU/memory cost parameter of (2^17), a minimum
  // block size of 8 (1024 bytes), and a parallelization parameter of 1". Mark S, as quoted in the
  // commit of a scrypt library that adopted it.
  test('at no lower cost than OWASP recommends', () => {
    expect(COST.log2N).toBeGreaterThanOrEqual(17);
    expect(COST.r).toBeGreaterThanOrEqual(8);
    expect(COST.p).toBeGreaterThanOrEqual(1);
  });
});

describe('the cipher of backups is the AES-256-GCM that was published', () => {
  test.each([
    {
      // NIST CAVP, GCM vectors for a key of 256 bits and a nonce of 96. Mark S, read as quoted in the
      // test vectors of a library.
      name: 'NIST CAVP',
      key: '83688deb4af8007f9b713b47cfa6c73e35ea7a3aa4ecdb414dded03bf7a0fd3a',
      nonce: '0b459724904e010a46901cf3',
      bound: '794a14ccd178c8ebfd1379dc704c5e208f9d8424',
      plain: '33d893a2114ce06fc15d55e454cf90c3',
      cipher: 'cc66bee423e3fcd4c0865715e9586696',
      tag: '0fb291bd3dba94a1dfd8b286cfb97ac5',
    },
    {
      // McGrew and Viega, "The Galois/Counter Mode of Operation (GCM)", test case 16. Mark M, from
      // memory; one wrong digit would fail here.
      name: 'McGrew and Viega 16',
      key: 'feffe9928665731c6d6a8f9467308308feffe9928665731c6d6a8f9467308308',
      nonce: 'cafebabefacedbaddecaf888',
      bound: 'feedfacedeadbeeffeedfacedeadbeefabaddad2',
      plain: `d9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a72
              1c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39`,
      cipher: `522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa
               8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662`,
      tag: '76fc6ece0f4e1768cddf8853bb2d551b',
    },
  ])('$name', ({ key, nonce, bound, plain, cipher, tag }) => {
    const gcm = createCipheriv('aes-256-gcm', hex(key), hex(nonce), { authTagLength: 16 });
    gcm.setAAD(hex(bound));
    const sealed = Buffer.concat([gcm.update(hex(plain)), gcm.final()]);
    expect(sealed).toEqual(hex(cipher));
    expect(gcm.getAuthTag()).toEqual(hex(tag));
  });
});
