namespace FermentWatch.Service.Settings;

/// <summary>Marks a setting whose value is never printed.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class SecretSettingAttribute : Attribute;
