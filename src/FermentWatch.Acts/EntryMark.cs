using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime;

namespace FermentWatch.Acts;

/// <summary>Under which id something is entered, and by whom. A form carries its id, so that a double tap counts once.</summary>
/// <param name="Id">Made when the form was shown, or by the caller of the API.</param>
/// <param name="Who">Who enters it.</param>
/// <param name="Role">What this person may do.</param>
/// <param name="Again">What is said of a form that was sent before with other content.</param>
public sealed record EntryMark(Guid Id, Person Who, MemberRole Role, Again Again = Again.NotSaid)
{
    /// <summary>How long it lay where it was typed before it could be sent: a phone in a cellar without reception. Zero as a rule.</summary>
    public Duration KeptFor { get; init; }

    /// <summary>The name the household uses.</summary>
    public string By => Who.Name;

    /// <summary>When it was typed.</summary>
    /// <param name="now">When it came in.</param>
    public Instant At(Instant now) => now - KeptFor;
}

/// <summary>Lets children and guests do an act. One without it is an adult's.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class OpenToChildrenAttribute : Attribute;

/// <summary>Lets scripts that may record do an act: it writes down what was done with jars. One without it is for scripts that may manage.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class OpenToRecordersAttribute : Attribute;

/// <summary>Names the acts behind a door (a page, an endpoint), by which the door knows whom it lets through.</summary>
/// <param name="acts">Classes of acts.</param>
[AttributeUsage(AttributeTargets.Class)]
public sealed class DoesAttribute(params Type[] acts) : Attribute
{
    public IReadOnlyList<Type> Acts { get; } = acts;

    /// <summary>Whether a person of this role may do one of them; each act refuses for itself what is not this person's.</summary>
    public bool IsOpenTo(MemberRole role) =>
        role == MemberRole.Adult || Acts.Any(act => act.IsDefined(typeof(OpenToChildrenAttribute), inherit: false));

    /// <summary>How far a script must be let to come through.</summary>
    public ScriptScope Needs =>
        Acts.All(act => act.IsDefined(typeof(OpenToRecordersAttribute), inherit: false)) ? ScriptScope.Record : ScriptScope.Manage;
}
