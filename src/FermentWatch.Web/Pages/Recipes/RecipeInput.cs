using FermentWatch.Kitchen.Recipes;

namespace FermentWatch.Web.Pages.Recipes;

/// <summary>The form of a recipe as the browser sends it.</summary>
public sealed class RecipeInput
{
    /// <summary>The recipe it becomes, made when the form was shown.</summary>
    public Guid Id { get; set; }

    public string? Name { get; set; }

    public string? Vegetables { get; set; }

    public string? Seasonings { get; set; }

    public string? Water { get; set; }

    public string? Vinegar { get; set; }

    public string? VinegarStrength { get; set; }

    public string? StarterBrine { get; set; }

    public string? Salt { get; set; }

    public string? SaltOf { get; set; }

    public string? Sourness { get; set; }

    public string? Cut { get; set; }

    public string? Allergens { get; set; }

    public string? Note { get; set; }

    public bool ItIsRight { get; set; }

    /// <summary>Filled with what stands.</summary>
    public static RecipeInput From(RecipeForm form, Guid id) => new()
    {
        Id = id, Name = form.Name, Vegetables = form.Vegetables, Seasonings = form.Seasonings, Water = form.Water, Salt = form.Salt,
        SaltOf = form.SaltOf, Sourness = form.Sourness, Cut = form.Cut, Allergens = form.Allergens, Note = form.Note,
        Vinegar = form.Vinegar, VinegarStrength = form.VinegarStrength, StarterBrine = form.StarterBrine,
    };

    /// <summary>The form the kitchen reads.</summary>
    public RecipeForm ToForm() => new()
    {
        Name = Name, Vegetables = Vegetables, Seasonings = Seasonings, Water = Water, Salt = Salt, SaltOf = SaltOf, Sourness = Sourness, Cut = Cut,
        Allergens = Allergens, Note = Note, ItIsRight = ItIsRight, Vinegar = Vinegar, VinegarStrength = VinegarStrength, StarterBrine = StarterBrine,
    };
}

/// <summary>A file that is handed over, as the browser sends it.</summary>
public sealed class RecipeFileInput
{
    /// <summary>The recipe it becomes, made when the form was shown.</summary>
    public Guid Id { get; set; }

    public IFormFile? File { get; set; }

    public bool ItIsRight { get; set; }
}
