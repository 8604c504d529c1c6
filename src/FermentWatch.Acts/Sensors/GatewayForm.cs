using FermentWatch.Acts.Rounds;
using FermentWatch.Intake.Topics;
using FermentWatch.Kitchen.Topics;

namespace FermentWatch.Acts.Sensors;

/// <summary>The form that adds a gateway or buttons, by the page and the API.</summary>
public sealed class GatewayForm
{
    /// <summary>What the household calls it.</summary>
    public string? Name { get; set; }

    /// <summary>The topic filter under which it may publish; buttons by the jars unless it says otherwise.</summary>
    public string? Filter { get; set; } = OwnTopics.JarButtons;

    /// <summary>What the desk takes. An empty filter is none at all, and never a sensor.</summary>
    internal AddInput ToInput(string by) => new(Name ?? "", null, Filter?.Trim() ?? "", by);
}
