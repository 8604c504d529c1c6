namespace FermentWatch.Intake.Decoding;

/// <summary>What a text that should be a number turned out to be.</summary>
public enum NumberShape
{
    /// <summary>A finite number.</summary>
    Finite = 1,

    /// <summary>Empty, null, NaN or infinity: the device says that it has no value.</summary>
    NoValue = 2,

    /// <summary>Anything else.</summary>
    NotANumber = 3,
}
