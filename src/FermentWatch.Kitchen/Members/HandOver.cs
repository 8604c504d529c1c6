using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>On one date somebody else does the round, alone.</summary>
public sealed class HandOver
{
    /// <summary>The date; the key.</summary>
    public required LocalDate Date { get; init; }

    /// <summary>Who does it instead.</summary>
    public required string Person { get; set; }

    /// <summary>Who handed it over.</summary>
    public required string By { get; set; }
}
