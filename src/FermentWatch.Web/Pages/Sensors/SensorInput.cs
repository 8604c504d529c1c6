using FermentWatch.Acts.Sensors;

namespace FermentWatch.Web.Pages.Sensors;

/// <summary>The forms of sensors as the browser sends them.</summary>
public sealed class SensorInput
{
    /// <summary>Made when the form was shown.</summary>
    public Guid Id { get; set; }

    public string? Name { get; set; }

    /// <summary><c>place NAME</c>, <c>jar NUMBER</c> or <c>nowhere</c>.</summary>
    public string? Where { get; set; }

    public AddSensorForm ToForm() => new() { Name = Name, Where = Where };
}
