using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-116, hexafluoroethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R116
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-116",
        Name = "hexafluoroethane",
        CasNumber = "76-16-4",
        Source = "E.W. Lemmon and R. Span, (2006), Short Fundamental Equations of State for 20 Industrial Fluids, J. "
            + "Chem. Eng. Data, vol. 51, 785-850, doi:10.1021/je050186n",
        MolarMass = 0.13801182,
        GasConstant = 8.314472,
        ReducingTemperature = 293.03,
        ReducingMolarDensity = 4444,
        CriticalTemperature = 293.03000000000003,
        CriticalPressure = 3048000,
        CriticalMolarDensity = 4444,
        AcentricFactor = 0.2566,
        MinimumTemperature = 173.1,
        MaximumTemperature = 425,
        MaximumPressure = 50000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 2.4818, 0.6483977749718459 },
                { 7.0622, 2.122649558065727 },
                { 7.9951, 5.016551206361124 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.1632, 1, 0.25, 0 },
                { -2.8123, 1, 1.125, 0 },
                { 0.77202, 1, 1.5, 0 },
                { -0.14331, 2, 1.375, 0 },
                { 0.10227, 3, 0.25, 0 },
                { 0.00024629, 7, 0.875, 0 },
                { 0.30893, 2, 0.625, 1 },
                { -0.028499, 5, 1.75, 1 },
                { -0.30343, 1, 3.625, 2 },
                { -0.068793, 4, 3.625, 2 },
                { -0.027218, 3, 14.5, 3 },
                { 0.010665, 4, 12, 3 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00037955, 9.3879E-06 },
            { 208.57, 0.00033245, 9.7233E-06 },
            { 216.13, 0.00029247, 1.0059E-05 },
            { 223.7, 0.00025788, 1.0401E-05 },
            { 231.27, 0.00022757, 1.0757E-05 },
            { 238.84, 0.00020064, 1.114E-05 },
            { 246.4, 0.00017643, 1.1568E-05 },
            { 253.97, 0.00015431, 1.2077E-05 },
            { 261.54, 0.00013384, 1.2723E-05 },
            { 269.1, 0.00011456, 1.361E-05 },
            { 276.67, 9.5786E-05, 1.4963E-05 },
            { 284.24, 7.6387E-05, 1.7375E-05 },
        },
    };
}
