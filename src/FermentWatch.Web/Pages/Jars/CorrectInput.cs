using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Web.Pages.PuttingUp;

namespace FermentWatch.Web.Pages.Jars;

/// <summary>The form by which a jar is put right, as the browser sends it.</summary>
public sealed class CorrectInput : JarInput
{
    public string? Since { get; set; }

    /// <summary>How many corrections the jar had when the form was shown: who puts right what changed meanwhile looks at it again.</summary>
    public int Seen { get; set; }

    /// <summary>Filled with what stands.</summary>
    public static CorrectInput From(PutUpForm form, int seen) => new()
    {
        What = form.What, ItsName = form.ItsName, HowMuch = form.HowMuch, Also = form.Also, Cut = form.Cut,
        Salt = form.Salt, SaltKnowledge = form.SaltKnowledge, AddedWater = form.AddedWater,
        StarterFrom = form.StarterFrom, StarterBrine = form.StarterBrine, Vinegar = form.Vinegar, VinegarStrength = form.VinegarStrength,
        Vessel = form.Vessel, Cover = form.Cover, Lid = form.Lid, Place = form.Place, Target = form.Target,
        PackedAt = form.PackedAt, Name = form.Name, Seen = seen,
    };

    /// <summary>The form the kitchen reads: a field left empty takes away what stood in it.</summary>
    public CorrectionForm ToForm() => new()
    {
        What = What, ItsName = ItsName ?? "", HowMuch = HowMuch ?? "", Also = Also ?? "", Cut = Cut,
        Salt = Salt ?? "", SaltKnowledge = SaltKnowledge, AddedWater = AddedWater ?? "",
        StarterFrom = StarterFrom ?? "", StarterBrine = StarterBrine ?? "", Vinegar = Vinegar ?? "", VinegarStrength = VinegarStrength ?? "",
        Vessel = Vessel ?? "", Cover = Cover, Lid = Lid, Place = Place, Target = Target,
        PackedAt = PackedAt, Name = Name ?? "", Since = Since, ItIsRight = ItIsRight,
    };
}
