namespace FermentWatch.Kitchen.Notices;

/// <summary>Makes the addresses by which a notice can be answered.</summary>
public interface INoticeLinks
{
    /// <summary>The address people reach the pages by, with a slash at its end; null where the settings do not say.</summary>
    Uri? Root { get; }

    /// <summary>The ways to answer a notice; empty where it asks nothing.</summary>
    IReadOnlyList<AnswerLink> Of(Notice notice);
}
