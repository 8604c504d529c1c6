namespace FermentWatch.Kitchen.Rounds;

/// <summary>What the next step of a jar is about, the most pressing first.</summary>
public enum StepKind
{
    RisingPh = 1,
    Mould = 2,
    Pressure = 3,
    BrineGone = 4,

    /// <summary>Anything else that was seen and is not settled.</summary>
    SeeTo = 5,

    MeasureAgain = 6,
    Measure = 7,
    Decide = 8,
    Taste = 9,

    /// <summary>A look, or nothing at all: no line of its own.</summary>
    Look = 10,
}
