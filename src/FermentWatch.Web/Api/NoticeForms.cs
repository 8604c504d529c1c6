namespace FermentWatch.Web.Api;

/// <summary>How somebody is to be reached.</summary>
/// <param name="Person">The name the household uses.</param>
/// <param name="Channel"><c>Email</c>, <c>Webhook</c> or <c>Mqtt</c>.</param>
/// <param name="Address">Mail address, web address or topic.</param>
/// <param name="Secret">Key by which a webhook's body is signed.</param>
public sealed record NoticeRouteForm(string? Person, string? Channel, string? Address, string? Secret);

/// <summary>Whether a kind of occasion is muted.</summary>
/// <param name="Muted">True: nobody is told of it.</param>
public sealed record MuteForm(bool Muted);

/// <summary>Whether people are asked to taste.</summary>
/// <param name="Paused">True for a week without; false for again from today on.</param>
public sealed record PauseForm(bool Paused);
