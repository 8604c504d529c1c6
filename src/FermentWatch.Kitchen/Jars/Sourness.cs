namespace FermentWatch.Kitchen.Jars;

/// <summary>How sour a household wants a jar, in five steps.</summary>
public enum Sourness
{
    ALittleSour = 1,
    BetweenALittleSourAndSour = 2,
    Sour = 3,
    BetweenSourAndVerySour = 4,
    VerySour = 5,
}
