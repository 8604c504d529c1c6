namespace FermentWatch.Kitchen.Words;

/// <summary>How warm a jar stands, in the classes of public advice.</summary>
public enum Warmth
{
    /// <summary>Below 60 F (15.6 C): slow, and may not ferment.</summary>
    Cold = 1,

    /// <summary>60 to 65 F (15.6 to 18.3 C): 5 to 6 weeks for kraut.</summary>
    Cool = 2,

    /// <summary>65 to 75 F (18.3 to 23.9 C): 3 to 4 weeks for kraut at its warmer half.</summary>
    Usual = 3,

    /// <summary>Above 75 F (23.9 C): fast, and may go soft.</summary>
    Warm = 4,
}
