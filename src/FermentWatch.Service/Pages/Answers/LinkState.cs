namespace FermentWatch.Service.Pages.Answers;

/// <summary>What a link is still good for.</summary>
public enum LinkState
{
    /// <summary>We did not make it, or its notice is gone.</summary>
    Unknown = 1,

    /// <summary>Its day is over.</summary>
    Expired = 2,

    /// <summary>Every one of its jars is answered for.</summary>
    Settled = 3,

    /// <summary>It waits for an answer.</summary>
    Open = 4,
}
