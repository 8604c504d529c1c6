using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.RoundAnswers;

namespace FermentWatch.Web.Pages.PuttingUp;

/// <summary>The put-up form as the browser sends it: what is tapped, and what is typed instead of it.</summary>
public sealed class PutUpInput
{
    /// <summary>Made when the form was shown, so that a double tap puts up once.</summary>
    public Guid Id { get; set; }

    /// <summary>One that is drawn.</summary>
    public string? What { get; set; }

    /// <summary>One of the rest; it goes before the one drawn.</summary>
    public string? Another { get; set; }

    /// <summary>The name of something else.</summary>
    public string? ItsName { get; set; }

    public string? HowMuch { get; set; }

    /// <summary>A per cent that was tapped, or <c>by taste</c>.</summary>
    public string? Salt { get; set; }

    /// <summary>A per cent that was typed; it goes before the one tapped.</summary>
    public string? SaltTyped { get; set; }

    public string? SaltKnowledge { get; set; }

    /// <summary>What the per cent are of.</summary>
    public string? SaltOf { get; set; }

    public string? Vessel { get; set; }

    /// <summary>A size that was typed; it goes before the one chosen.</summary>
    public string? VesselTyped { get; set; }

    public string? Place { get; set; }

    public string? Target { get; set; }

    public string? HowMany { get; set; }

    public string? Also { get; set; }

    public string? Cut { get; set; }

    public string? AddedWater { get; set; }

    /// <summary>Number of the jar whose brine goes in.</summary>
    public string? StarterFrom { get; set; }

    public string? StarterBrine { get; set; }

    public string? Vinegar { get; set; }

    public string? VinegarStrength { get; set; }

    public string? Cover { get; set; }

    public string? Lid { get; set; }

    public string? PackedAt { get; set; }

    public string? Name { get; set; }

    /// <summary>What looks odd is right.</summary>
    public bool ItIsRight { get; set; }

    /// <summary>What is said of a form that was sent before with other content.</summary>
    public Again Again { get; set; }

    /// <summary>The form the kitchen reads.</summary>
    public PutUpForm ToForm() => new()
    {
        What = string.IsNullOrWhiteSpace(Another) ? What : Another, SaltOf = SaltOf, ItsName = ItsName, HowMuch = HowMuch, Also = Also, Cut = Cut,
            AddedWater = AddedWater, StarterFrom = StarterFrom,
            StarterBrine = StarterBrine, Vinegar = Vinegar, VinegarStrength = VinegarStrength, Place = Place, Target = Target,
        Salt = string.IsNullOrWhiteSpace(SaltTyped) ? Salt : SaltTyped, SaltKnowledge = SaltKnowledge,
        Vessel = string.IsNullOrWhiteSpace(VesselTyped) ? Vessel : VesselTyped,
        Cover = Cover, Lid = Lid, HowMany = HowMany, PackedAt = PackedAt, Name = Name, ItIsRight = ItIsRight,
    };
}
