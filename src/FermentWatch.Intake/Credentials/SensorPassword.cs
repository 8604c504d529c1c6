using System.Security.Cryptography;
using FermentWatch.Kitchen.Sensors;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace FermentWatch.Intake.Credentials;

/// <summary>
/// Passwords of sensors and gateways. They are made by us, never chosen: 24 characters of 31 are 118 bits, so that they need no
/// stretching against guessing. The number of rounds is therefore small: every connect costs one check, on a small board too.
/// </summary>
public static class SensorPassword
{
    /// <summary>What passwords are made of: lower case and digits without those that look alike (i, l, o, 0, 1).</summary>
    public const string Characters = "abcdefghjkmnpqrstuvwxyz23456789";

    /// <summary>How many of them a password has, hyphens not counted.</summary>
    public const int Length = 24;

    private const int GroupLength = 6;
    private const int HashRounds = 1_000;

    private static readonly PasswordHasher<MqttCredential> _hasher =
        new(Options.Create(new PasswordHasherOptions { IterationCount = HashRounds }));

    /// <summary>A new random password, in groups of six with hyphens between, which are part of it.</summary>
    public static string Generate() =>
        string.Join('-', RandomNumberGenerator.GetString(Characters, Length).Chunk(GroupLength).Select(group => new string(group)));

    /// <summary>The salted hash to keep.</summary>
    public static string Hash(string password) => _hasher.HashPassword(null!, password);

    /// <summary>Whether the password is the one of the credential.</summary>
    public static bool Verify(MqttCredential credential, string password)
    {
        try
        {
            return _hasher.VerifyHashedPassword(credential, credential.PasswordHash, password) != PasswordVerificationResult.Failed;
        }
        catch (FormatException)
        {
            // What is kept is no hash: nobody knows a password for it.
            return false;
        }
    }
}
