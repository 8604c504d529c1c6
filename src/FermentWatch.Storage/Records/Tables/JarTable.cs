using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Storage.Records.Conversions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Jars, with what went in.</summary>
internal sealed class JarTable : IEntityTypeConfiguration<Jar>
{
    public void Configure(EntityTypeBuilder<Jar> builder)
    {
        builder.ToTable("jar");
        builder.HasIndex(jar => jar.Number).IsUnique();
        builder.HasIndex(jar => jar.EndedAt);
        builder.Property(jar => jar.Portions).HasConversion(new PortionsConverter(), PortionsConverter.Comparer);
        // By name: the catalogue's own numbers may be put in another order.
        builder.Property(jar => jar.Cut).HasConversion(new EnumNameConverter<Cut>(Cut.Shredded));
        builder.ComplexProperty(jar => jar.Salting);
        builder.Property(jar => jar.Starter).HasConversion(new JsonRecordConverter<Starter>());
        builder.Property(jar => jar.Vinegar).HasConversion(new JsonRecordConverter<Vinegar>());
        builder.Ignore(jar => jar.Standing).Ignore(jar => jar.Stage);
        builder.HasMany(jar => jar.Placements).WithOne().HasForeignKey(placement => placement.JarId);
        builder.HasMany(jar => jar.Corrections).WithOne().HasForeignKey(correction => correction.JarId);
        builder.HasMany(jar => jar.Observations).WithOne().HasForeignKey(observation => observation.JarId);
    }
}
