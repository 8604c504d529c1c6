namespace FermentWatch.Kitchen.Words;

/// <summary>How far the gas of the first days has come.</summary>
public enum Bubbling
{
    None = 1,
    Beginning = 2,
    Liveliest = 3,
    Slowing = 4,
    Over = 5,
}
