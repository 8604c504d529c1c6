namespace FermentWatch.Web.Pages.Sensors;

/// <summary>The form that gives a sensor to a place or a jar.</summary>
public sealed class SensorInput
{
    public string? Slug { get; set; }

    /// <summary><c>place NAME</c>, <c>jar NUMBER</c> or <c>nowhere</c>.</summary>
    public string? Where { get; set; }
}
