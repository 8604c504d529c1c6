using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.ColdStore;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Words;
using NodaTime;
using static FermentWatch.Kinetics.Sentence;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>The one thing to do now with a jar, the most pressing first.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Text">What to do, in a sentence or two.</param>
/// <param name="Sign">What it is about in a few words without the jar.</param>
/// <param name="Asks">What to do about it, as briefly; null where the sign says it.</param>
public sealed record NextStep(StepKind Kind, string Text, string Sign, string? Asks = null)
{
    /// <summary>The step in a few words, equal for jars that ask for the same.</summary>
    public string InBrief => Asks is null ? Sign : $"{Sign}: {Asks}";

    /// <summary>Whether it is shown as a warning: a rising pH, mould or slime, pressure, brine gone. Nothing else is.</summary>
    public bool Urgent => Kind <= StepKind.BrineGone;

    /// <summary>A look on a day on which nothing else is to be done.</summary>
    public static NextStep Look(bool opening) => opening
        ? new(StepKind.Look, "Open it today: surface and rim clean, everything under?", "open and look")
        : new(StepKind.Look, "Look through the glass: brine over the vegetables, nothing afloat. No need to open.", "look through the glass");

    /// <summary>The step of a jar on its date.</summary>
    /// <param name="on">The jar on that date, with everything but its step.</param>
    /// <param name="zone">The household's zone.</param>
    public static NextStep Of(RoundJar on, DateTimeZone zone)
    {
        if (on.Jar.Stage is JarStage.Finished or JarStage.ThrownOut)
            return new(StepKind.Look, $"This jar is {Ended(on.Jar)}. Nothing to do.", "ended");
        if (AcidLineWords.Sentence(on.Line.Alarm) is { } alarm)
            return new(StepKind.RisingPh, alarm, on.Line.Alarm == AcidLineAlarm.RiseToRecheck ? "pH higher than before" : "pH rising",
                on.Line.Alarm == AcidLineAlarm.RiseToRecheck ? "measure again" : "look at it now, taste nothing");
        if (on.Jar.Stage == JarStage.Cold)
            return LeftInJar.OpenSince(on.Jar) is null
                ? new(StepKind.Look, "In the cold. Loosen the lid once a week; eat the oldest jar first.", "in the cold")
                : new(StepKind.Look, "In the cold, and open: eat it before the closed ones.", "open, in the cold");
        if (OfTrouble(on) is { } trouble)
            return trouble;
        NextStep step = OfLine(on, zone) ?? OfTasting(on) ?? Quiet(on);
        return LeftBehind(on) is { } trace ? step with { Text = $"{trace} {step.Text}" } : step;
    }

    private static string Ended(Jar jar) => jar.IsFrozen ? "in the freezer" : ObservationWords.Of(jar.Stage);

    private static NextStep? OfTrouble(RoundJar on)
    {
        if (on.State.Pressure is not null && on.State.Last is not { Kind: SightingKind.Slime or SightingKind.FuzzOrUnsure })
            return new(StepKind.Pressure, "Pressure, or brine pushed out: let the gas out over the sink, wipe it, top up with salt water.",
                "pressure", "let the gas out");
        if (on.State is not { Last: { } seen } || !(on.State.CloserWatch || on.State.ForecastWithdrawn))
            return null;
        bool watched = on.State.CloserWatch;
        string name = ObservationWords.Of(seen.Kind), sign = ObservationWords.InBrief(seen.Kind);
        if (on.State.Handled is { } done)
            return new(StepKind.SeeTo, $"{Capital(ObservationWords.Of(done.Kind))}. All well on {Days(on.State.WellDaysToGo)} settles "
                + $"it.{(on.State.ForecastWithdrawn && NoForecast.Of(on.Jar) is null ? " Nothing is forecast until then." : "")}",
                ObservationWords.Of(done.Kind), "does it stay well?");
        return (seen.Kind, on.State.Remedy) switch
        {
            (_, null) when !watched => null,
            (SightingKind.FuzzOrUnsure or SightingKind.Slime, _) =>
                new(StepKind.Mould, $"{Capital(name)} was seen. Do what its guide says; taste nothing.{Withdrawn(on)}", sign, Asking(seen.Kind)),
            (SightingKind.BrineLow, { } remedy) => new(watched ? StepKind.BrineGone : StepKind.SeeTo,
                $"Brine low. Press under and top up with salt water, never plain; then write down \"{ObservationWords.Of(remedy)}\".{Withdrawn(on)}",
                sign, Asking(seen.Kind)),
            (_, { } remedy) => new(StepKind.SeeTo,
                $"After {name}: do what its guide says, then write down \"{ObservationWords.Of(remedy)}\".{Withdrawn(on)}", sign, Asking(seen.Kind)),
            _ => new(StepKind.SeeTo, $"After {name}: do what its guide says.{Withdrawn(on)}", sign, Asking(seen.Kind)),
        };
    }

    /// <summary>What to do about what was seen, as briefly as a guide can be said.</summary>
    private static string Asking(SightingKind kind) => kind switch
    {
        SightingKind.PiecesUp => "press them under",
        SightingKind.Film => "skim it off",
        SightingKind.BrineLow => "top up with salt water",
        SightingKind.Slime => "throw it out, taste nothing",
        SightingKind.FuzzOrUnsure => "see guide, taste nothing",
        SightingKind.OffSmell => "keep it apart, taste nothing",
        _ => "see guide",
    };

    /// <summary>What trouble that nothing settles has left once it was watched long enough: no line of its own any more, but no forecast
    /// either.</summary>
    private static string? LeftBehind(RoundJar on) => on.State is { ForecastWithdrawn: true, Last: { } seen }
        ? $"After {ObservationWords.Of(seen.Kind)}: all well since.{Withdrawn(on)}" : null;

    private static string Withdrawn(RoundJar on) => !on.State.ForecastWithdrawn || NoForecast.Of(on.Jar) is not null ? ""
        : on.State.Remedy is null ? " Nothing is forecast until a pH is measured."
            : " Nothing is forecast until it is settled, or a pH is measured.";

    /// <summary>What the line asks for; nothing in a household that cannot measure, whatever the day.</summary>
    private static NextStep? OfLine(RoundJar on, DateTimeZone zone)
    {
        if (!on.LookFors.Contains(LookFor.MeasurePh) || MeasuredOn(on, zone))
            return null;
        if (on.Line.State == AcidLineState.MeasuredAbove)
            return new(StepKind.MeasureAgain,
                $"Last measured above 4.6. Measure again today. {(on.Day >= LineRule.WeekRuleDay ? LineRule.PublicAdvice : "")}".TrimEnd(),
                "last measured above 4.6", "measure again");
        if (on.Line is { State: AcidLineState.MeasuredBelow, Settled: false })
            return new(StepKind.Measure, on.Line.BlendedMissing
                ? "Measure pieces blended with their brine: in them the acid comes last, and that settles the acid line."
                : "Measure once more on another day: two readings settle the acid line.", "measure the pH");
        string first = on.Line.State == AcidLineState.NotMeasured ? $"Day {on.Day}, and no reading below 4.6 yet. " : "";
        string how = EveningOut.IsUnderWay(on.Jar, on.Day) ? " " + EveningOut.WhatToMeasure : "";
        string late = first.Length > 0 && on.Day >= LineRule.WeekRuleDay ? " " + LineRule.PublicAdvice : "";
        return new(StepKind.Measure, $"{first}Measure the pH today.{how}{late}", "measure the pH");
    }

    private static bool MeasuredOn(RoundJar on, DateTimeZone zone) =>
        on.Jar.Standing.OfType<PhMeasurement>().Any(each => each.At.InZone(zone).Date == on.Date);

    private static NextStep? OfTasting(RoundJar on)
    {
        if (on.Taste is not { } taste)
            return null;
        string lot = taste.Others.Count > 0 && taste.By == on.Jar.Number ? $" It stands for {NumberList.Say(taste.Others)}." : "";
        if (on.LookFors.Contains(LookFor.Taste))
            return new(StepKind.Taste, $"Taste it today: not yet, nearly, right, or past it?{lot}", "taste");
        if (taste.SaidRight)
            return new(StepKind.Decide, "Tasted right or past it. Into the cold, eat it, or leave it?", "into the cold, eat it, or leave it?");
        return taste.IsPast(on.Date) && taste.By == on.Jar.Number
            ? new(StepKind.Decide, $"Past its tasting days, as expected. Into the cold, eat it, or leave it?{lot}",
                "into the cold, eat it, or leave it?") : null;
    }

    private static NextStep Quiet(RoundJar on) => on.Day == 0 ? new(StepKind.Look, "Put up today. Nothing to do before tomorrow.", "put up today")
        : on.LookedAtToday ? new(StepKind.Look, "Looked at today. Nothing more to do.", "looked at today")
        : Look(on.Opening);

    private static string Days(int days) => days == 1 ? "one more day" : $"{days} days";
}

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
