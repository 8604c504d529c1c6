using System.Globalization;

namespace FermentWatch.Kitchen.Topics;

/// <summary>Every topic of our own, on whichever broker: what sensors and buttons say, and what we say.</summary>
public static class OwnTopics
{
    /// <summary>Under which everything of ours lies.</summary>
    public const string House = "fermentwatch/";

    /// <summary>Under which all sensors made for it report: <c>fermentwatch/sensor/ID/QUANTITY</c>.</summary>
    public const string Sensors = House + "sensor/";

    /// <summary>The topics on which buttons by the jars report.</summary>
    public const string JarButtons = House + "jar/+/checked";

    /// <summary>The topics on which we say how jars stand.</summary>
    public const string JarStates = House + "jar/+/state";

    /// <summary>Where we say what is to be looked at today.</summary>
    public const string RoundToday = House + "round/today";

    /// <summary>Where we say whether we are there: <c>online</c>, <c>offline</c>.</summary>
    public const string ServiceStatus = House + "service/status";

    /// <summary>The filters that hold all that we say, and may say one day.</summary>
    public static IReadOnlyList<string> Said { get; } = [JarStates, House + "round/#", House + "service/#"];

    /// <summary>Where we say how one jar stands.</summary>
    public static string JarState(int number) => string.Create(CultureInfo.InvariantCulture, $"{House}jar/{number}/state");

    /// <summary>Where the button by one jar reports.</summary>
    public static string JarButton(int number) => string.Create(CultureInfo.InvariantCulture, $"{House}jar/{number}/checked");
}
