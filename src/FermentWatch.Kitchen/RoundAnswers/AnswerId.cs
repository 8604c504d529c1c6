using System.Security.Cryptography;

namespace FermentWatch.Kitchen.RoundAnswers;

/// <summary>Names the observations an answer makes, so that the same answer sent twice makes them once.</summary>
public static class AnswerId
{
    /// <summary>An id that depends on the answer and the jar only: a version 8 UUID (RFC 9562, section 5.8) of their SHA-256.</summary>
    public static Guid Of(Guid answer, Guid jar)
    {
        Span<byte> both = stackalloc byte[32];
        answer.TryWriteBytes(both, bigEndian: true, out _);
        jar.TryWriteBytes(both[16..], bigEndian: true, out _);
        return Named(both);
    }

    /// <summary>An id that depends on some words only.</summary>
    public static Guid Named(string words) => Named(System.Text.Encoding.UTF8.GetBytes(words));

    private static Guid Named(ReadOnlySpan<byte> words)
    {
        Span<byte> hash = stackalloc byte[32];
        SHA256.HashData(words, hash);
        hash[6] = (byte)((hash[6] & 0x0F) | 0x80);
        hash[8] = (byte)((hash[8] & 0x3F) | 0x80);
        return new Guid(hash[..16], bigEndian: true);
    }
}
