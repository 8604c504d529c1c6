using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Storage.Records.Conversions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Jars, with what went in.</summary>
internal sealed class JarTable : IEntityTypeConfiguration<Jar>
{
    /// <summary>Column: the revision of the facts at which anything of the jar changed last. Known to the store alone.</summary>
    public const string ChangedAtRevision = "ChangedAtRevision";

    public void Configure(EntityTypeBuilder<Jar> builder)
    {
        builder.ToTable("jar");
        builder.Property<long>(ChangedAtRevision);
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

/// <summary>Where jars stood.</summary>
internal sealed class JarPlacementTable : IEntityTypeConfiguration<JarPlacement>
{
    public void Configure(EntityTypeBuilder<JarPlacement> builder)
    {
        builder.ToTable("jar_placement");
        builder.Property(placement => placement.Id).ValueGeneratedNever();
        builder.HasOne<Place>().WithMany().HasForeignKey(placement => placement.PlaceId).OnDelete(DeleteBehavior.Restrict);
    }
}

/// <summary>What was put right in the records of jars, and what stood before.</summary>
internal sealed class JarCorrectionTable : IEntityTypeConfiguration<JarCorrection>
{
    public void Configure(EntityTypeBuilder<JarCorrection> builder)
    {
        builder.ToTable("jar_correction");
        builder.Property(correction => correction.Id).ValueGeneratedNever();
    }
}
