using FermentWatch.Kitchen.Notices;
using NodaTime;

namespace FermentWatch.Notices.Tests.Doubles;

/// <summary>Notices and routes to send.</summary>
internal static class Make
{
    public static readonly Instant Now = Instant.FromUtc(2026, 10, 4, 5, 0);

    public static readonly Guid Counter = new("11111111-1111-1111-1111-111111111111"), Cellar = new("22222222-2222-2222-2222-222222222222");

    public static Notice Notice(bool asks = false) => new()
    {
        Id = new Guid("0199ae10-0000-7000-8000-000000000001"), Key = "round/2026-10-04/Mira", RouteId = Guid.NewGuid(), Person = "Mira",
        Title = "Sun 4 Oct: 3 jars, one minute", Body = "Under brine? Küche 1, 2; cellar 5\nOpen: 5", DueAt = Now,
        ExpiresAt = Now + Duration.FromHours(12), NextAttemptAt = Now,
        Question = asks ? new NoticeQuestion(new LocalDate(2026, 10, 4), Now + Duration.FromHours(17),
        [new(Counter, "Küche", [1, 2], []), new(Cellar, "cellar", [5], [5])]) : null,
    };

    public static NoticeRoute Route(Channel channel, string address, string? secret = null) =>
        new() { Id = Guid.NewGuid(), Person = "Mira", Channel = channel, Address = address, Secret = secret };
}
