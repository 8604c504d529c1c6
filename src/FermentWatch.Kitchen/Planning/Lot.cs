namespace FermentWatch.Kitchen.Planning;

/// <summary>Vessels alike that are filled on one day, or are there already.</summary>
/// <param name="StartDay">Days from today on which they are filled; below 0 of what stands there already.</param>
/// <param name="Count">How many.</param>
/// <param name="VesselLitres">Size of each.</param>
/// <param name="LitresEach">What each gives at the table, litres, where none is lost.</param>
/// <param name="Ready">When they are sour; null of what is in the store already.</param>
/// <param name="IsPlanned">Whether the plan starts it.</param>
public sealed record Lot(int StartDay, int Count, double VesselLitres, double LitresEach, ReadyDays? Ready, bool IsPlanned)
{
    /// <summary>The day from today on which half are sour.</summary>
    public int MiddleDay => DayAfter(Ready?.Middle);

    /// <summary>The day from today on which nine in ten are.</summary>
    public int LateDay => DayAfter(Ready?.Late);

    /// <summary>The day from today on which one in ten is.</summary>
    public int EarlyDay => DayAfter(Ready?.Early);

    /// <summary>The day from today at a standard normal deviate.</summary>
    public int DayAt(double deviate) => DayAfter(Ready?.At(deviate));

    /// <summary>Litres at the table of all.</summary>
    public double Litres => Count * LitresEach;

    private int DayAfter(double? days) => days is { } known ? Math.Max(0, StartDay + (int)Math.Ceiling(known)) : 0;
}

/// <summary>Days on which something can be started, and what is expected of it then.</summary>
/// <param name="Day">Days from today.</param>
/// <param name="Celsius">What is expected of the room while it works, on the mean of its first three weeks.</param>
/// <param name="Ready">When it is sour.</param>
/// <param name="IsSoonAlone">Whether the household leaves within five days.</param>
public sealed record StartDay(int Day, double Celsius, ReadyDays Ready, bool IsSoonAlone);
