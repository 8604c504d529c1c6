namespace FermentWatch.Kitchen.RoundAnswers;

/// <summary>What somebody says of a form that was sent before with other content.</summary>
public enum Again
{
    /// <summary>Nothing yet: it is asked about.</summary>
    NotSaid = 0,

    /// <summary>What was sent before was wrong; this takes its place.</summary>
    Correction = 1,

    /// <summary>Both are meant.</summary>
    Another = 2,
}
