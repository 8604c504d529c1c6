namespace FermentWatch.Web.Pages.Labels;

/// <summary>
/// A sheet of labels as they are sold, named by its measures. Where its labels lie is in <c>labels.css</c> under its key: common sheets, from
/// memory; a first print on plain paper held against the sheet shows whether they meet.
/// </summary>
/// <param name="Key">Its name in addresses and style sheet.</param>
/// <param name="Name">Its measures, as the wrapper of such sheets gives them.</param>
/// <param name="Labels">Labels on a sheet.</param>
internal sealed record LabelSheet(string Key, string Name, int Labels)
{
    public static readonly IReadOnlyList<LabelSheet> All =
    [
        new("plain", "plain paper, to cut: 2 x 5 of 95 x 52 mm", 10),
        new("a4-70x37", "A4, 3 x 8 of 70 x 37 mm", 24),
        new("a4-99x38", "A4, 2 x 7 of 99.1 x 38.1 mm", 14),
        new("letter-67x25", "Letter, 3 x 10 of 2 5/8 x 1 inch", 30),
        new("letter-102x51", "Letter, 2 x 5 of 4 x 2 inches", 10),
    ];

    /// <summary>The sheet of a key; plain paper for any other.</summary>
    public static LabelSheet Of(string? key) => All.FirstOrDefault(sheet => sheet.Key == key) ?? All[0];

    /// <summary>Labels by sheet, the first of them with places left empty where labels were taken before.</summary>
    /// <param name="labels">What is printed.</param>
    /// <param name="taken">Labels that are gone from the first sheet, from its top left on.</param>
    public IEnumerable<T?[]> Fill<T>(IEnumerable<T> labels, int taken) where T : class =>
        Enumerable.Repeat<T?>(null, Math.Clamp(taken, 0, Labels - 1)).Concat(labels).Chunk(Labels);
}
