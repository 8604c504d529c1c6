using System.Text.Json;
using FermentWatch.Kitchen.Notices;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>What a notice asks, as JSON in its row: it is written once and read with the notice.</summary>
internal sealed class QuestionConverter()
    : ValueConverter<NoticeQuestion?, string?>(question => Write(question), stored => Read(stored))
{
    /// <summary>A question is never changed, only put.</summary>
    internal static readonly ValueComparer<NoticeQuestion?> Comparer = new(
        (left, right) => ReferenceEquals(left, right), question => question == null ? 0 : question.Date.GetHashCode(), question => question);

    private static string? Write(NoticeQuestion? question) => question is null ? null
        : JsonSerializer.Serialize(new Stored(LocalDatePattern.Iso.Format(question.Date), InstantPattern.ExtendedIso.Format(question.Until),
            question.Shelves));

    private static NoticeQuestion? Read(string? stored)
    {
        if (stored is null || StoredJson.Read<Stored>(stored) is not { Date: not null, Until: not null, Shelves: not null } read)
            return null;
        return LocalDatePattern.Iso.Parse(read.Date).TryGetValue(default, out LocalDate date)
            && InstantPattern.ExtendedIso.Parse(read.Until).TryGetValue(default, out Instant until) ? new NoticeQuestion(date, until, read.Shelves)
                : null;
    }

    private sealed record Stored(string Date, string Until, IReadOnlyList<AskedShelf> Shelves);
}
