using FermentWatch.Kinetics.Forecasting;
using NodaTime;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>What was typed after <c>outlook</c>, as typed.</summary>
internal sealed record OutlookInput
{
    /// <summary>Vegetables, each <c>NAME</c> or <c>NAME=MASS</c>.</summary>
    public IReadOnlyList<string> Produce { get; init; } = [];

    public string? Cut { get; init; }

    /// <summary>Per cent of vegetables and added water, or <c>by taste</c>.</summary>
    public string? Salt { get; init; }

    public string? Water { get; init; }

    public string? Seasonings { get; init; }

    /// <summary><c>MASS=ACIDITY</c>, per cent lactic.</summary>
    public string? Starter { get; init; }

    /// <summary><c>MASS=STRENGTH</c>, per cent acetic acid.</summary>
    public string? Vinegar { get; init; }

    public string? Vessel { get; init; }

    public string? Temperature { get; init; }

    /// <summary>A file of temperatures.</summary>
    public string? Temperatures { get; init; }

    /// <summary>When the jar was packed, for files with times.</summary>
    public string? Packed { get; init; }

    /// <summary>Planned moves, each <c>DAY=TEMPERATURE</c>.</summary>
    public IReadOnlyList<string> Moves { get; init; } = [];

    /// <summary>pH measured, each <c>DAY=PH:METHOD</c>.</summary>
    public IReadOnlyList<string> Readings { get; init; } = [];

    /// <summary>Titrations, each <c>DAY=PERCENT</c>, per cent lactic.</summary>
    public IReadOnlyList<string> Titrations { get; init; } = [];

    public string? Days { get; init; }

    public string? Every { get; init; }

    public string? Members { get; init; }

    public string? Seed { get; init; }

    /// <summary>Levels whose days are asked for.</summary>
    public IReadOnlyList<string> Until { get; init; } = [];

    /// <summary>How sour it should be, in words or as a level.</summary>
    public string? Target { get; init; }

    /// <summary>The date on which it should be ready.</summary>
    public string? Ready { get; init; }
}

/// <summary>What is asked of <c>outlook</c>, read and checked.</summary>
/// <param name="Request">The jar, without a target.</param>
/// <param name="Until">Levels whose days are asked for, by the words they were asked with.</param>
/// <param name="Target">How sour it should be, by the words it was asked with; null if nobody said.</param>
/// <param name="Ready">On which date it should be that; null if nobody said.</param>
internal sealed record OutlookCall(ForecastRequest Request, IReadOnlyList<NamedTarget> Until, NamedTarget? Target, LocalDate? Ready);
