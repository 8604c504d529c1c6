using System.Security.Cryptography;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.RoundAnswers;

/// <summary>What an answer comes to.</summary>
/// <param name="Observations">What is to be filed; empty if there is nothing new or anything was wrong.</param>
/// <param name="Known">Jars that somebody had answered for before, with what that was, in one line each.</param>
/// <param name="Refusals">What was wrong.</param>
public sealed record AnswerOutcome(
    IReadOnlyList<Observation> Observations, IReadOnlyList<string> Known, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>A question, where the form was sent before with other content and nobody said yet what this is; else null.</summary>
    public string? Asked { get; init; }

    /// <summary>The observation whose place the new one takes; null where it takes none.</summary>
    public Guid? Replaces { get; init; }
}

/// <summary>What somebody says of a form that was sent before with other content.</summary>
public enum Again
{
    /// <summary>Nothing yet: it is asked about.</summary>
    NotSaid = 0,

    /// <summary>What was sent before was wrong; this takes its place.</summary>
    Correction = 1,

    /// <summary>Both are meant.</summary>
    Another = 2,
}

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
