using System.Globalization;
using FermentWatch.Kinetics;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Kitchen.Typed;

/// <summary>Reads typed fields and gathers what is wrong with them, so that all of it can be shown at once.</summary>
public sealed class FieldReader
{
    /// <summary>What was wrong so far.</summary>
    public List<Refusal> Refusals { get; } = [];

    public void Refuse(string field, string? came, string wouldBeRight) =>
        Refusals.Add(new Refusal(field, string.IsNullOrWhiteSpace(came) ? "nothing" : came.Trim(), wouldBeRight));

    /// <summary>An amount within a range; the middle of the range after a refusal, so that reading can go on.</summary>
    public double Read(string field, string? typed, Amount kind, string? unitIfBare, double low, double high, string rangeWords)
    {
        if (kind.TryRead(typed, unitIfBare, out double value) && value >= low && value <= high)
            return value;
        Refuse(field, typed, $"{rangeWords} would be right, such as {kind.Example}{Amount.ReadTwoWays(typed)}");
        return (low + high) / 2;
    }

    /// <summary>A whole number within a range, or the default where nothing was typed.</summary>
    public int ReadWhole(string field, string? typed, int ifEmpty, int low, int high)
    {
        if (string.IsNullOrWhiteSpace(typed))
            return ifEmpty;
        if (int.TryParse(typed, NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite,
            CultureInfo.InvariantCulture, out int value)
            && value >= low && value <= high)
            return value;
        Refuse(field, typed, string.Create(CultureInfo.InvariantCulture, $"a whole number from {low} to {high} would be right"));
        return ifEmpty;
    }

    /// <summary>A choice by its name or number, or the default where nothing was typed.</summary>
    public T ReadChoice<T>(string field, string? typed, T ifEmpty) where T : struct, Enum
    {
        if (string.IsNullOrWhiteSpace(typed))
            return ifEmpty;
        string squeezed = typed.Replace(" ", "", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal);
        if (Enum.TryParse(squeezed, ignoreCase: true, out T choice) && Enum.IsDefined(choice))
            return choice;
        Refuse(field, typed, $"one of {string.Join(", ", Enum.GetNames<T>())} would be right");
        return ifEmpty;
    }

    /// <summary>A time of day, seconds left out; null where nothing was typed, and after a refusal.</summary>
    public LocalTime? ReadTimeOfDay(string field, string? typed, string example)
    {
        string time = (typed ?? "").Trim();
        if (time.Length == 0)
            return null;
        if (LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(time.Length > 5 ? time[..5] : time) is { Success: true, Value: var read })
            return read;
        Refuse(field, typed, $"a time of day would be right, such as {example}");
        return null;
    }

    /// <summary>A date from today up to a last one; null where nothing was typed, and after a refusal.</summary>
    public LocalDate? ReadAhead(string field, string? typed, LocalDate today, LocalDate last)
    {
        if (string.IsNullOrWhiteSpace(typed))
            return null;
        if (LocalDatePattern.Iso.Parse(typed.Trim()) is { Success: true, Value: var date } && date >= today && date <= last)
            return date;
        Refuse(field, typed, string.Create(CultureInfo.InvariantCulture,
            $"a day from today to {last:d MMMM uuuu}, where the forecast ends, would be right"));
        return null;
    }

    /// <summary>An instant typed on the household's clock, not in the future; now where nothing was typed.</summary>
    /// <param name="field">The field, for the refusal.</param>
    /// <param name="typed">A date, or a date and time, in ISO 8601.</param>
    /// <param name="zone">The household's zone.</param>
    /// <param name="now">The present.</param>
    /// <param name="oldest">The earliest that is believed.</param>
    public Instant ReadPast(string field, string? typed, DateTimeZone zone, Instant now, Instant oldest)
    {
        if (string.IsNullOrWhiteSpace(typed))
            return now;
        LocalDate today = now.InZone(zone).Date;
        Instant? read = null;
        if (LocalDatePattern.Iso.Parse(typed.Trim()) is { Success: true, Value: var date })
            read = date == today ? now : (date + new LocalTime(12, 0)).InZoneLeniently(zone).ToInstant();
        else if (LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(typed.Trim()[..Math.Min(16,
            typed.Trim().Length)]) is { Success: true, Value: var time })
            read = time.InZoneLeniently(zone).ToInstant();
        if (read <= now && read >= oldest)
            return read.Value;
        string range = string.Create(CultureInfo.InvariantCulture,
            $"a day from {oldest.InZone(zone).Date:d MMMM uuuu} to today, {today:d MMMM uuuu}, would be right");
        Refuse(field, typed, range);
        return now;
    }
}
