namespace FermentWatch.Web.Gates;

/// <summary>Nothing but the token against forged forms, which the binding of a form makes the framework ask for.</summary>
public sealed class SignOutForm;
