namespace FermentWatch.Acts.Notices;

/// <summary>What a browser gives with its subscription (W3C Push API).</summary>
/// <param name="Endpoint">Where its push service takes messages for it.</param>
/// <param name="P256dh">Its public key, 65 bytes as base64url.</param>
/// <param name="Auth">Its authentication secret, 16 bytes as base64url.</param>
public sealed record PhoneInput(string? Endpoint, string? P256dh, string? Auth);
