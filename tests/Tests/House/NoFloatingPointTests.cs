using System.Reflection;
using System.Reflection.Emit;

namespace Tests.House;

/// <summary>Counts, turns and weight are exact; floating point begins at the loudspeaker and the screen.</summary>
public sealed class NoFloatingPointTests
{
    private const BindingFlags Own = BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public
        | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;

    private static readonly string[] ExactRooms = ["Scuff.Timing", "Scuff.Stance"];

    // The one door out: what is drawn or sounded asks here, and nothing comes back in.
    private static readonly string[] Doors = ["Scuff.Timing.Ratio.ToDouble"];

    private static readonly Dictionary<short, OpCode> OpCodesByValue = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(f => (OpCode)f.GetValue(null)!)
        .ToDictionary(o => o.Value);

    [Fact]
    public void No_signature_or_field_of_the_exact_rooms_has_floating_point()
    {
        Type[] types = TypesOfExactRooms();

        Assert.NotEmpty(types);
        Repository.AssertNone("floating point in the exact rooms:", types.SelectMany(t => t.GetFields(Own))
            .Where(f => IsFloating(f.FieldType))
            .Select(Named)
            .Concat(MethodsOf(types).Where(HasFloatingSignature).Select(Named)));
    }

    [Fact]
    public void No_body_of_the_exact_rooms_reckons_in_floating_point()
        => Repository.AssertNone("floating point reckoned in the exact rooms:", MethodsOf(TypesOfExactRooms())
            .Where(ReckonsInFloatingPoint)
            .Select(Named));

    [Fact]
    public void Floating_point_inside_a_body_is_noticed()
    {
        MethodInfo hidden = typeof(NoFloatingPointTests).GetMethod(nameof(HalfByWayOfADouble), Own)!;

        Assert.False(HasFloatingSignature(hidden));
        Assert.True(ReckonsInFloatingPoint(hidden));
        Assert.False(ReckonsInFloatingPoint(typeof(NoFloatingPointTests).GetMethod(nameof(IsFloating), Own)!));
    }

    private static int HalfByWayOfADouble(int whole) => (int)(whole * 0.5);

    private static Type[] TypesOfExactRooms() => [.. Repository.Scuff.GetTypes().Where(t => ExactRooms.Contains(t.Namespace))];

    private static IEnumerable<MethodBase> MethodsOf(IEnumerable<Type> types) => types
        .SelectMany(t => t.GetMethods(Own).Concat<MethodBase>(t.GetConstructors(Own)))
        .Where(m => !Doors.Contains(Named(m)));

    private static bool HasFloatingSignature(MethodBase method)
        => method.GetParameters().Any(p => IsFloating(p.ParameterType)) || (method is MethodInfo m && IsFloating(m.ReturnType));

    private static bool ReckonsInFloatingPoint(MethodBase method)
    {
        MethodBody? body = method.GetMethodBody();
        return body is not null
            && (body.LocalVariables.Any(v => IsFloating(v.LocalType)) || InstructionsOf(body.GetILAsByteArray()!).Any(OpensFloatingPoint));

        bool OpensFloatingPoint((OpCode Code, int Token) instruction)
            => instruction.Code == OpCodes.Ldc_R4
                || instruction.Code == OpCodes.Ldc_R8
                || instruction.Code == OpCodes.Conv_R4
                || instruction.Code == OpCodes.Conv_R8
                || instruction.Code == OpCodes.Conv_R_Un
                || (instruction.Code.OperandType == OperandType.InlineMethod
                    && method.Module.ResolveMethod(
                        instruction.Token,
                        method.DeclaringType!.GetGenericArguments(),
                        method.IsGenericMethod ? method.GetGenericArguments() : null) is MethodInfo called
                    && IsFloating(called.ReturnType));
    }

    private static bool IsFloating(Type type)
    {
        Type bare = type.IsByRef ? type.GetElementType()! : Nullable.GetUnderlyingType(type) ?? type;
        return bare == typeof(double)
            || bare == typeof(float)
            || bare == typeof(Half)
            || (bare.IsArray && IsFloating(bare.GetElementType()!))
            || bare.GetGenericArguments().Any(a => a != bare && IsFloating(a));
    }

    // Reads compiled code one instruction at a time; the token is the operand where that has four bytes.
    private static IEnumerable<(OpCode Code, int Token)> InstructionsOf(byte[] code)
    {
        int at = 0;
        while (at < code.Length)
        {
            short value = code[at++];
            if (value == 0xFE)
            {
                value = unchecked((short)(0xFE00 | code[at++]));
            }

            OpCode found = OpCodesByValue[value];
            int size = found.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(code, at)),
                _ => 4,
            };
            yield return (found, size == 4 ? BitConverter.ToInt32(code, at) : 0);
            at += size;
        }
    }

    private static string Named(MemberInfo member) => $"{member.DeclaringType}.{member.Name}";
}
