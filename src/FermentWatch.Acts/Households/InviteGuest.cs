using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Households;

/// <summary>Where links for whoever looks in are made and withdrawn.</summary>
public sealed class InviteGuest(IGuestBook guests, TimeProvider clock)
{
    private const int LongestName = 40;
    private const int UsualDays = 7;
    private const int LongestDays = 60;

    private Instant Now => clock.GetUtcNow().ToInstant();

    /// <summary>Links that open the round at present.</summary>
    public Task<IReadOnlyList<GuestLink>> OpenAsync(CancellationToken cancellationToken) => guests.OpenAsync(Now, cancellationToken);

    /// <summary>Makes a link. Its path holds the secret, which is not kept; or what was wrong.</summary>
    public async Task<(string? Path, IReadOnlyList<Refusal> Refusals)> MakeAsync(GuestInput input, string by, CancellationToken cancellationToken)
    {
        var reader = new FieldReader();
        string name = reader.ReadName("guest", input.Name, LongestName);
        int days = reader.ReadWhole("days", input.Days, UsualDays, 1, LongestDays);
        if (reader.Refusals.Count > 0)
            return (null, reader.Refusals);
        string secret = LongSecret.New();
        await guests.AddAsync(new GuestLink
        {
            Id = Guid.CreateVersion7(clock.GetUtcNow()), Name = name, SecretHash = LongSecret.HashOf(secret), MadeBy = by, MadeAt = Now,
                ExpiresAt = Now + Duration.FromDays(days),
        }, cancellationToken);
        return ($"guest/{secret}", []);
    }

    public Task WithdrawAsync(Guid id, CancellationToken cancellationToken) => guests.WithdrawAsync(id, Now, cancellationToken);

    /// <summary>The link of a secret; null if there is none. Whether it still opens the round is said beside it.</summary>
    public async Task<(GuestLink Link, bool Opens)?> FindAsync(string secret, CancellationToken cancellationToken) =>
        await guests.FindAsync(LongSecret.HashOf(secret), cancellationToken) is { } link ? (link, link.Opens(Now)) : null;
}

/// <summary>Somebody who looks in, as typed.</summary>
public sealed class GuestInput
{
    public string? Name { get; set; }

    /// <summary>For how many days the link opens the round.</summary>
    public string? Days { get; set; }

    /// <summary>The link that is withdrawn; empty for a new one.</summary>
    public string? Withdrawn { get; set; }
}
