using FermentWatch.Kitchen.Households;

namespace FermentWatch.Acts;

/// <summary>Lets children and guests do an act. One without it is an adult's.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class OpenToChildrenAttribute : Attribute;

/// <summary>Names the acts behind a door (a page, an endpoint), by which the door knows whom it lets through.</summary>
/// <param name="acts">Classes of acts.</param>
[AttributeUsage(AttributeTargets.Class)]
public sealed class DoesAttribute(params Type[] acts) : Attribute
{
    public IReadOnlyList<Type> Acts { get; } = acts;

    /// <summary>Whether a person of this role may do one of them; each act refuses for itself what is not this person's.</summary>
    public bool IsOpenTo(MemberRole role) =>
        role == MemberRole.Adult || Acts.Any(act => act.IsDefined(typeof(OpenToChildrenAttribute), inherit: false));
}
