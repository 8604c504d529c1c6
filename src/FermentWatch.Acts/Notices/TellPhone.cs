using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Acts.Notices;

/// <summary>Where a browser says that it wants to be told by push.</summary>
[OpenToChildren]
public sealed class TellPhone(INoticeBook book, IEnumerable<INoticeChannel> channels, TimeProvider clock) : IDisposable
{
    /// <summary>One at a time: a wet finger taps twice, and must not have a phone told twice.</summary>
    private readonly SemaphoreSlim _turn = new(1, 1);

    private INoticeChannel Door => channels.First(each => each.Channel == Channel.WebPush);

    /// <summary>
    /// Writes a browser down for a person. One browser is one person's: where another had it, it is taken over; the same again stays
    /// as it was, so that what waits for it is still sent.
    /// </summary>
    /// <returns>The route and whether it is new, or what was wrong.</returns>
    public async Task<(NoticeRoute? Route, bool IsNew, IReadOnlyList<Refusal> Refusals)> AddAsync(Person person, PhoneInput input,
        CancellationToken cancellationToken)
    {
        if (Check(input) is { Count: > 0 } refusals)
            return (null, false, refusals);
        string endpoint = input.Endpoint!.Trim(), secret = new BrowserKeys(input.P256dh!, input.Auth!).ToSecret();
        await _turn.WaitAsync(cancellationToken);
        try
        {
            var before = (await book.RoutesAsync(cancellationToken)).Where(route =>
                route.Channel == Channel.WebPush && route.Address == endpoint).ToList();
            if (before is [var same] && same.Person == person.Name && same.Secret == secret)
                return (same, false, []);
            var route = new NoticeRoute { Id = Guid.CreateVersion7(clock.GetUtcNow()), Person = person.Name, Channel = Channel.WebPush,
                Address = endpoint, Secret = secret, MadeBy = person.Name, MadeById = person.AccountId };
            await book.AddRouteAsync(route, cancellationToken);
            foreach (NoticeRoute old in before)
                await book.RemoveRouteAsync(old.Id, cancellationToken);
            return (route, true, []);
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();

    private List<Refusal> Check(PhoneInput input)
    {
        var refusals = new List<Refusal>();
        if (Door.Missing is { } missing)
            refusals.Add(new("channel", nameof(Channel.WebPush), missing));
        if (Door.WouldBeRight(input.Endpoint) is { } right)
            refusals.Add(new("endpoint", Came(input.Endpoint), right));
        if (!BrowserKeys.IsPublicKey(input.P256dh))
            refusals.Add(new("p256dh", Came(input.P256dh),
                "the browser's public key, 65 bytes of a point on the curve P-256 as base64url, would be right"));
        // A secret is not repeated to anybody.
        if (!BrowserKeys.IsAuth(input.Auth))
            refusals.Add(new("auth", string.IsNullOrWhiteSpace(input.Auth) ? "nothing" : "something else",
                "the browser's authentication secret, 16 bytes as base64url, would be right"));
        return refusals;
    }

    private static string Came(string? typed) =>
        string.IsNullOrWhiteSpace(typed) ? "nothing" : typed.Trim() is { Length: > 60 } much ? much[..60] + "…" : typed.Trim();
}

/// <summary>What a browser gives with its subscription (W3C Push API).</summary>
/// <param name="Endpoint">Where its push service takes messages for it.</param>
/// <param name="P256dh">Its public key, 65 bytes as base64url.</param>
/// <param name="Auth">Its authentication secret, 16 bytes as base64url.</param>
public sealed record PhoneInput(string? Endpoint, string? P256dh, string? Auth);
