using FermentWatch.Kitchen.PuttingUp;

namespace FermentWatch.Web.Pages.Jars;

/// <summary>The form by which a jar is put right, as the browser sends it.</summary>
public sealed class CorrectInput
{
    public string? What { get; set; }

    /// <summary>The name of something else.</summary>
    public string? ItsName { get; set; }

    public string? HowMuch { get; set; }

    public string? Also { get; set; }

    public string? Cut { get; set; }

    public string? Salt { get; set; }

    public string? SaltKnowledge { get; set; }

    public string? AddedWater { get; set; }

    /// <summary>Number of the jar whose brine went in.</summary>
    public string? StarterFrom { get; set; }

    public string? StarterBrine { get; set; }

    public string? Vinegar { get; set; }

    public string? VinegarStrength { get; set; }

    public string? Vessel { get; set; }

    public string? PackedAt { get; set; }

    public string? Name { get; set; }

    public string? Place { get; set; }

    public string? Cover { get; set; }

    public string? Lid { get; set; }

    public string? Target { get; set; }

    public string? Since { get; set; }

    public bool ItIsRight { get; set; }

    /// <summary>How many corrections the jar had when the form was shown: who puts right what changed meanwhile looks at it again.</summary>
    public int Seen { get; set; }

    /// <summary>Filled with what stands.</summary>
    public static CorrectInput From(PutUpForm form, int seen) => new()
    {
        What = form.What, ItsName = form.ItsName, HowMuch = form.HowMuch, Also = form.Also, Cut = form.Cut, Salt = form.Salt,
            SaltKnowledge = form.SaltKnowledge,
        AddedWater = form.AddedWater, StarterFrom = form.StarterFrom, StarterBrine = form.StarterBrine, Vinegar = form.Vinegar,
            VinegarStrength = form.VinegarStrength,
        Vessel = form.Vessel, PackedAt = form.PackedAt, Name = form.Name, Place = form.Place, Cover = form.Cover,
        Lid = form.Lid, Target = form.Target, Seen = seen,
    };

    public CorrectionForm ToForm() => new()
    {
        What = What, ItsName = ItsName ?? "", HowMuch = HowMuch ?? "", Also = Also ?? "", Cut = Cut, Salt = Salt ?? "",
            SaltKnowledge = SaltKnowledge,
        AddedWater = AddedWater ?? "", StarterFrom = StarterFrom ?? "", StarterBrine = StarterBrine ?? "",
        Vinegar = Vinegar ?? "", VinegarStrength = VinegarStrength ?? "", Vessel = Vessel ?? "", PackedAt = PackedAt, Name = Name ?? "",
            Place = Place, Cover = Cover, Lid = Lid,
        Target = Target, Since = Since, ItIsRight = ItIsRight,
    };
}
