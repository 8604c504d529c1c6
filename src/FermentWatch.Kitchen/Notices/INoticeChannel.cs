namespace FermentWatch.Kitchen.Notices;

/// <summary>A door to people.</summary>
public interface INoticeChannel
{
    Channel Channel { get; }

    /// <summary>What is missing in the settings before it can send, with what would mend it; null where nothing is.</summary>
    string? Missing => null;

    /// <summary>What would be right in place of an address that is none for this channel; null where it is one.</summary>
    string? WouldBeRight(string? address);

    /// <summary>Tries once. Trouble of the receiver is an outcome, never an exception.</summary>
    /// <param name="notice">What to say; its <see cref="Notice.Key"/> goes along.</param>
    /// <param name="route">Whom to tell.</param>
    /// <param name="late">How late it is, for the message to say so; null when it is in time.</param>
    Task<DeliveryOutcome> SendAsync(Notice notice, NoticeRoute route, string? late, CancellationToken cancellationToken);
}
