namespace FermentWatch.Kitchen.Members;

/// <summary>Somebody of the household.</summary>
/// <param name="Name">The name the household uses.</param>
/// <param name="Role">What this person may do.</param>
/// <param name="Duty">Days and quiet hours.</param>
public sealed record Member(string Name, MemberRole Role, Duty Duty)
{
    /// <summary>Somebody of whom nothing was written down: an adult, on every day, with no quiet hours.</summary>
    public static Member Unknown(string name) => new(name, MemberRole.Adult, new Duty { Person = name });
}
