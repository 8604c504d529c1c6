using System.Globalization;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Acts.Rounds;

/// <summary>
/// Presses on buttons by the jars, as the answer "all well" for that jar. Who looked before on the same day stays the one who
/// looked, so that a press that comes twice is one look.
/// </summary>
internal sealed class JarButtons(IJarBook jars, SayAllWell allWell) : IJarButtons
{
    /// <summary>Who is written down as having looked.</summary>
    public const string By = "the button";

    public async Task<bool> PressedAsync(string jar, Instant at, CancellationToken cancellationToken)
    {
        IReadOnlyList<Jar> kept = await jars.KeptAsync(cancellationToken);
        bool isNumber = int.TryParse(jar, NumberStyles.None, CultureInfo.InvariantCulture, out int number);
        if (kept.FirstOrDefault(each => isNumber ? each.Number == number : Guid.TryParse(jar, out Guid id) && each.Id == id) is not { } pressed)
            return false;
        var mark = new EntryMark(Guid.CreateVersion7(at.ToDateTimeOffset()), new Person(By), MemberRole.Child);
        await allWell.DoAsync(new HashSet<int> { pressed.Number }, new HashSet<int>(), mark, cancellationToken);
        return true;
    }
}
