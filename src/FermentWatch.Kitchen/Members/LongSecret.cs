using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace FermentWatch.Kitchen.Members;

/// <summary>A secret that opens a door by itself: too long to be guessed, shown once, and kept as its hash only.</summary>
public static class LongSecret
{
    private const int Bytes = 18;

    /// <summary>A new one of 144 random bits, in letters that an address takes.</summary>
    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>What is kept of it. A long random one needs no salt.</summary>
    public static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}
