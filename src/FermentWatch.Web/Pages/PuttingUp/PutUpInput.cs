using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Web.Pages.Shared;

namespace FermentWatch.Web.Pages.PuttingUp;

/// <summary>The put-up form as the browser sends it: what is tapped, and what is typed instead of it.</summary>
public sealed class PutUpInput : JarInput
{
    /// <summary>Made when the form was shown, so that a double tap puts up once.</summary>
    public Guid Id { get; set; }

    /// <summary>A vegetable that is not drawn; it goes before the one that is.</summary>
    public string? Another { get; set; }

    /// <summary>A per cent that was typed; it goes before the one tapped.</summary>
    public string? SaltTyped { get; set; }

    /// <summary>What the salt tub weighed before and after; it goes before what was tapped or typed.</summary>
    public string? TubBefore { get; set; }

    public string? TubAfter { get; set; }

    /// <summary>What the per cent are of.</summary>
    public string? SaltOf { get; set; }

    /// <summary>A size that was typed; it goes before the one chosen.</summary>
    public string? VesselTyped { get; set; }

    public string? HowMany { get; set; }

    /// <summary>What is said of a form that was sent before with other content.</summary>
    public Again Again { get; set; }

    /// <summary>Filled with what an earlier jar was put up with; when it was packed and whose brine went in are this one's own.</summary>
    /// <param name="earlier">The earlier jar as a form.</param>
    /// <param name="vessels">Sizes that can be chosen; another one is typed.</param>
    public static PutUpInput Like(PutUpForm earlier, IReadOnlyList<Choice> vessels)
    {
        bool isDrawn = DrawnChoices.Vegetables.Any(drawn => drawn.Value == earlier.What);
        string salt = earlier.Salt!.Replace(" %", "", StringComparison.Ordinal), vessel = earlier.Vessel!.Replace(" ", "", StringComparison.Ordinal);
        bool saltIsOffered = PutUpChoices.Salt.Any(choice => choice.Value == salt), vesselIsOffered = vessels.Any(choice => choice.Value == vessel);
        return new PutUpInput
        {
            What = isDrawn ? earlier.What : null, Another = isDrawn ? null : earlier.What, ItsName = earlier.ItsName, HowMuch = earlier.HowMuch,
            Also = earlier.Also, Cut = earlier.Cut, Salt = saltIsOffered ? salt : null, SaltTyped = saltIsOffered ? null : earlier.Salt,
            SaltKnowledge = earlier.SaltKnowledge, AddedWater = earlier.AddedWater, Vinegar = earlier.Vinegar,
            VinegarStrength = earlier.VinegarStrength, Vessel = vesselIsOffered ? vessel : null,
            VesselTyped = vesselIsOffered ? null : earlier.Vessel, Cover = earlier.Cover, Lid = earlier.Lid, Place = earlier.Place,
            Target = earlier.Target, Name = earlier.Name,
        };
    }

    /// <summary>The form the kitchen reads.</summary>
    public PutUpForm ToForm() => new()
    {
        What = Before(Another, What), ItsName = ItsName, HowMuch = HowMuch, Also = Also, Cut = Cut,
        Salt = Before(SaltTyped, Salt), SaltOf = SaltOf, SaltKnowledge = SaltKnowledge,
        TubBefore = TubBefore, TubAfter = TubAfter, AddedWater = AddedWater,
        StarterFrom = StarterFrom, StarterBrine = StarterBrine, Vinegar = Vinegar, VinegarStrength = VinegarStrength,
        Vessel = Before(VesselTyped, Vessel), Cover = Cover, Lid = Lid, Place = Place, Target = Target,
        HowMany = HowMany, PackedAt = PackedAt, Name = Name, ItIsRight = ItIsRight,
    };

    private static string? Before(string? typed, string? tapped) => string.IsNullOrWhiteSpace(typed) ? tapped : typed;
}
