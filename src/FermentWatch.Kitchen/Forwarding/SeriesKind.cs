namespace FermentWatch.Kitchen.Forwarding;

/// <summary>The series that are passed on to a time-series database of the household's own.</summary>
public enum SeriesKind
{
    Reading = 1,
    Estimate = 2,
    Observation = 3,
}
