using System.Buffers.Binary;
using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace FermentWatch.Notices.Tests.WebPush;

/// <summary>
/// A browser that has subscribed, written from the receiver's side of RFC 8291 (M. Thomson, "Message Encryption for Web Push", 2017,
/// section 3.4) and RFC 8188 (M. Thomson, "Encrypted Content-Encoding for HTTP", 2017, section 2), with none of the sender's code.
/// </summary>
internal sealed class PushBrowser : IDisposable
{
    private const int SaltBytes = 16, SizeBytes = 4, KeyBytes = 16, NonceBytes = 12, TagBytes = 16, IkmBytes = 32;
    private const byte LastRecord = 2;

    private readonly ECDiffieHellman _key;
    private readonly byte[] _auth;

    /// <summary>One with fresh keys.</summary>
    public PushBrowser()
        : this(ECDiffieHellman.Create(ECCurve.NamedCurves.nistP256), RandomNumberGenerator.GetBytes(16))
    {
    }

    private PushBrowser(ECDiffieHellman key, byte[] auth) => (_key, _auth) = (key, auth);

    public string P256dh => Base64Url.EncodeToString(Public());

    public string Auth => Base64Url.EncodeToString(_auth);

    /// <summary>One with keys that were published.</summary>
    public static PushBrowser Of(string publicKey, string privateKey, string auth)
    {
        byte[] point = Base64Url.DecodeFromChars(publicKey);
        var key = new ECParameters { Curve = ECCurve.NamedCurves.nistP256, D = Base64Url.DecodeFromChars(privateKey),
            Q = new ECPoint { X = point[1..33], Y = point[33..] } };
        return new PushBrowser(ECDiffieHellman.Create(key), Base64Url.DecodeFromChars(auth));
    }

    /// <summary>Decrypts a message of one record.</summary>
    /// <exception cref="CryptographicException">It was not for this browser, or was changed on its way.</exception>
    public string Decrypt(byte[] body)
    {
        byte[] salt = body[..SaltBytes];
        Assert.Equal(4096u, BinaryPrimitives.ReadUInt32BigEndian(body.AsSpan(SaltBytes, SizeBytes)));
        int keyLength = body[SaltBytes + SizeBytes], head = SaltBytes + SizeBytes + 1 + keyLength;
        byte[] sender = body[(head - keyLength)..head], record = body[head..];
        byte[] ikm = HKDF.DeriveKey(HashAlgorithmName.SHA256, Shared(sender), IkmBytes, _auth, [.. "WebPush: info\0"u8, .. Public(), .. sender]);
        byte[] key = HKDF.DeriveKey(HashAlgorithmName.SHA256, ikm, KeyBytes, salt, "Content-Encoding: aes128gcm\0"u8.ToArray());
        byte[] nonce = HKDF.DeriveKey(HashAlgorithmName.SHA256, ikm, NonceBytes, salt, "Content-Encoding: nonce\0"u8.ToArray());
        byte[] plain = new byte[record.Length - TagBytes];
        using var aes = new AesGcm(key, TagBytes);
        aes.Decrypt(nonce, record.AsSpan(0, plain.Length), record.AsSpan(plain.Length), plain);
        int end = plain.AsSpan().TrimEnd((byte)0).Length - 1;
        Assert.Equal(LastRecord, plain[end]);
        return Encoding.UTF8.GetString(plain, 0, end);
    }

    public void Dispose() => _key.Dispose();

    private byte[] Shared(byte[] sender)
    {
        using var other = ECDiffieHellman.Create(
            new ECParameters { Curve = ECCurve.NamedCurves.nistP256, Q = new ECPoint { X = sender[1..33], Y = sender[33..] } });
        return _key.DeriveRawSecretAgreement(other.PublicKey);
    }

    private byte[] Public()
    {
        ECParameters own = _key.ExportParameters(includePrivateParameters: false);
        return [4, .. own.Q.X!, .. own.Q.Y!];
    }
}
