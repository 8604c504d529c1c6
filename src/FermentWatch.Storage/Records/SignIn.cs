using NodaTime;

namespace FermentWatch.Storage.Records;

/// <summary>A sign-in that has not been ended.</summary>
public sealed class SignIn
{
    public required Guid Id { get; init; }

    public required Guid AccountId { get; init; }

    public required Instant BegunAt { get; init; }
}
