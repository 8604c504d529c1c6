using FermentWatch.Kitchen.Answers;
using FermentWatch.Kitchen.Jars;
using NodaTime;

namespace FermentWatch.Service.Demo.Household;

/// <summary>The moment of a deed.</summary>
/// <param name="Jar">The jar as it stands at that moment.</param>
/// <param name="At">When.</param>
/// <param name="By">Who.</param>
/// <param name="Answering">The kitchen's rules of entering things, at that moment.</param>
/// <param name="ExpectedPh">The pH a jar of this kind would probably have then.</param>
internal sealed record DeedAt(Jar Jar, Instant At, string By, Answering Answering, double ExpectedPh);
