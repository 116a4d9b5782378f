// Makes data/ingredients.csv from USDA SR28 (a work of the US Government) with our own short names and allergen marks.
// Run from the repository root after `npm run build`:  node data/make/make-ingredients.mjs
//
// One food a line:  id | our name | SR28 number | class | US allergens | EU allergens
// The class is ours too: what the food is raw, "plant" (no meat, fish, egg or milk in it), or why it may be eaten as it is.
// Bread and crackers are "cooked", as makers may bake milk or egg into them; what is sold dried is "dried", as US law wants
// dried eggs free of Salmonella (21 CFR 160.105; 9 CFR 590.575, whites) and dried milk is made from pasteurised milk.
// An allergen ends in ? when it depends on the maker; the species stands in brackets where labels must name it.
// The marks are our reading of the food's name: a reminder to check the label, not a declaration.
import { renameSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { CLASS_COLUMN, INGREDIENT_COLUMNS, parseIngredients } from "slabwright/food";
import { loadFoods } from "slabwright/notebook";

const CHOSEN = `
turkey-ground-93 | ground turkey 93 % lean, raw | 05665 | poultry | |
turkey-ground-85 | ground turkey 85 % lean, raw | 05668 | poultry | |
turkey-breast | turkey breast meat, raw | 05219 | poultry | |
chicken-ground | ground chicken, raw | 05332 | poultry | |
chicken-breast | chicken breast, skinless, raw | 05062 | poultry | |
chicken-thigh | chicken thigh meat, raw | 05096 | poultry | |
beef-ground-80 | ground beef 80/20, raw | 23572 | ground meat | |
beef-ground-85 | ground beef 85/15, raw | 23567 | ground meat | |
beef-ground-90 | ground beef 90/10, raw | 23562 | ground meat | |
pork-ground | ground pork, raw | 10219 | ground meat | |
lamb-ground | ground lamb, raw | 17224 | ground meat | |
bacon | bacon, raw | 10123 | whole meat | |
ham-sliced | ham, sliced, water added | 07028 | cooked | milk?; soy? | milk?; soy?
pollock-alaska | Alaska pollock, raw | 15066 | fish | fish (Alaska pollock) | fish
cod-atlantic | Atlantic cod, raw | 15015 | fish | fish (cod) | fish
haddock | haddock, raw | 15033 | fish | fish (haddock) | fish
whiting | whiting, raw | 15132 | fish | fish (whiting) | fish
tilapia | tilapia, raw | 15261 | fish | fish (tilapia) | fish
salmon-farmed | Atlantic salmon, farmed, raw | 15236 | fish | fish (salmon) | fish
salmon-pink-canned | pink salmon, canned, whole can | 15084 | cooked | fish (salmon) | fish
tuna-canned-water | light tuna in water, drained | 15121 | cooked | fish (tuna) | fish
surimi | surimi | 15109 | fish | fish (check species); egg? | fish; egg?
shrimp | shrimp, raw | 15270 | fish | crustacean (shrimp) | crustacean; sulphite?
crab-canned | blue crab, canned | 15141 | cooked | crustacean (crab) | crustacean; sulphite?
squid | squid, raw | 15175 | fish | | mollusc
egg-whole | whole egg, raw | 01123 | egg | egg | egg
egg-white | egg white, raw | 01124 | egg | egg | egg
egg-yolk | egg yolk, raw | 01125 | egg | egg | egg
egg-whole-dried | whole egg, dried | 01133 | dried | egg | egg
egg-white-dried | egg white, dried | 01173 | dried | egg | egg
milk-whole | whole milk | 01077 | pasteurised | milk | milk
milk-skim | skim milk | 01085 | pasteurised | milk | milk
milk-dry-nonfat | nonfat dry milk | 01091 | dried | milk | milk
buttermilk | cultured buttermilk, low fat | 01088 | pasteurised | milk | milk
buttermilk-dried | buttermilk powder | 01094 | dried | milk | milk
yogurt-plain | plain yogurt, whole milk | 01116 | pasteurised | milk | milk
yogurt-greek | Greek yogurt, plain, nonfat | 01256 | pasteurised | milk | milk
sour-cream | sour cream | 01056 | pasteurised | milk | milk
cream-heavy | heavy whipping cream | 01053 | pasteurised | milk | milk
butter | butter, unsalted | 01145 | pasteurised | milk | milk
butter-salted | butter, salted | 01001 | pasteurised | milk | milk
cheddar | cheddar | 01009 | pasteurised | milk | milk
mozzarella-part-skim | mozzarella, low moisture, part skim | 01029 | pasteurised | milk | milk
parmesan-grated | hard grating cheese, grated (parmesan) | 01032 | pasteurised | milk | milk; egg?
romano | hard grating cheese (romano) | 01038 | pasteurised | milk | milk; egg?
feta | feta | 01019 | pasteurised | milk | milk
ricotta | ricotta, whole milk | 01036 | pasteurised | milk | milk
cottage-cheese | cottage cheese, creamed | 01012 | pasteurised | milk | milk
cream-cheese | cream cheese | 01017 | pasteurised | milk | milk
goat-cheese-soft | goat cheese, soft | 01159 | pasteurised | milk | milk
whey-sweet-dried | sweet whey powder | 01115 | dried | milk | milk
tofu-firm | firm tofu | 16426 | plant | soy | soy
tempeh | tempeh | 16114 | plant | soy | soy; gluten?
edamame-frozen | edamame, frozen | 11211 | plant | soy | soy
soy-flour-defatted | defatted soy flour | 16117 | plant | soy | soy
soy-concentrate | soy protein concentrate | 16121 | plant | soy | soy
soy-isolate | soy protein isolate | 16122 | plant | soy | soy
wheat-gluten | vital wheat gluten | 48052 | plant | wheat | gluten (wheat)
lentils-red-dry | red lentils, dry | 16144 | plant | |
lentils-dry | lentils, dry | 16069 | plant | |
lentils-cooked | lentils, boiled, drained | 16070 | plant | |
chickpeas-dry | chickpeas, dry | 16056 | plant | |
chickpeas-cooked | chickpeas, boiled, drained | 16057 | plant | |
chickpeas-canned | chickpeas, canned, drained | 16358 | plant | |
chickpea-flour | chickpea flour | 16157 | plant | |
hummus | hummus | 16158 | plant | sesame | sesame
black-beans-dry | black beans, dry | 16014 | plant | |
black-beans-cooked | black beans, boiled, drained | 16015 | plant | |
kidney-beans-cooked | kidney beans, boiled, drained | 16028 | plant | |
white-beans-cooked | white beans, boiled, drained | 16050 | plant | |
pinto-beans-cooked | pinto beans, boiled, drained | 16043 | plant | |
split-peas-dry | green split peas, dry | 16085 | plant | |
split-peas-cooked | green split peas, boiled | 16086 | plant | |
lupin-cooked | lupins, boiled, drained | 16077 | plant | | lupin
peas-frozen | green peas, frozen | 11312 | plant | |
corn-frozen | sweetcorn kernels, frozen | 11178 | plant | |
corn-canned | sweetcorn, canned, drained | 11172 | plant | |
beets-raw | beets, raw | 11080 | plant | |
beets-cooked | beets, boiled, drained | 11081 | plant | |
carrots-raw | carrots, raw | 11124 | plant | |
carrots-cooked | carrots, boiled, drained | 11125 | plant | |
celery | celery, raw | 11143 | plant | | celery
celeriac | celeriac, raw | 11141 | plant | | celery
onion | onion, raw | 11282 | plant | |
onion-flakes | dehydrated onion flakes | 11284 | plant | | sulphite?
scallion | scallion, raw | 11291 | plant | |
leek | leek, raw | 11246 | plant | |
garlic | garlic, raw | 11215 | plant | |
ginger-root | ginger root, raw | 11216 | plant | |
pepper-red | red sweet pepper, raw | 11821 | plant | |
pepper-green | green sweet pepper, raw | 11333 | plant | |
jalapeno | jalapeño, raw | 11979 | plant | |
spinach-raw | spinach, raw | 11457 | plant | |
spinach-frozen | spinach, frozen | 11463 | plant | |
kale | kale, raw | 11233 | plant | |
cabbage | cabbage, raw | 11109 | plant | |
cauliflower | cauliflower, raw | 11135 | plant | |
cauliflower-frozen | cauliflower, frozen | 11137 | plant | |
broccoli | broccoli, raw | 11090 | plant | |
broccoli-frozen | broccoli, frozen, chopped | 11092 | plant | |
zucchini | zucchini, raw | 11477 | plant | |
butternut | butternut squash, raw | 11485 | plant | |
pumpkin-canned | pumpkin, canned | 11424 | plant | |
parsnip | parsnip, raw | 11298 | plant | |
eggplant | eggplant, raw | 11209 | plant | |
mushrooms-white | white mushrooms, raw | 11260 | plant | |
mushrooms-brown | brown mushrooms, raw | 11266 | plant | |
tomato-paste | tomato paste | 11546 | plant | |
tomatoes-dried | sun-dried tomatoes | 11955 | plant | | sulphite?
potato-raw | potato, flesh and skin, raw | 11352 | plant | |
potato-boiled | potato, boiled without skin | 11367 | plant | |
potato-flakes | potato flakes, dry | 11378 | plant | | sulphite?
potato-flour | potato flour | 11413 | plant | | sulphite?
hash-brown-frozen | shredded potato, frozen | 11390 | plant | | sulphite?
sweet-potato-raw | sweet potato, raw | 11507 | plant | |
sweet-potato-baked | sweet potato, baked, flesh | 11508 | plant | |
flour-all-purpose | all-purpose wheat flour | 20081 | plant | wheat | gluten (wheat)
flour-bread | bread flour | 20083 | plant | wheat | gluten (wheat)
flour-cake | cake flour | 20084 | plant | wheat | gluten (wheat)
flour-whole-wheat | whole-wheat flour | 20080 | plant | wheat | gluten (wheat)
semolina | semolina | 20066 | plant | wheat | gluten (wheat)
rice-flour | white rice flour | 20061 | plant | |
rice-flour-brown | brown rice flour | 20090 | plant | |
corn-masa-flour | instant corn masa flour | 20017 | plant | |
corn-flour | whole-grain corn flour | 20016 | plant | |
cornmeal | whole-grain cornmeal | 20020 | plant | |
cornmeal-degermed | degermed cornmeal | 20022 | plant | |
cornstarch | cornstarch | 20027 | plant | |
arrowroot | arrowroot flour | 20003 | plant | |
tapioca-pearl | tapioca pearl, dry | 20068 | plant | |
oats-rolled | rolled oats, dry | 08120 | plant | wheat? | gluten (oats)
oat-bran | oat bran, raw | 20033 | plant | wheat? | gluten (oats)
oat-flour | oat flour | 20132 | plant | wheat? | gluten (oats)
buckwheat-flour | buckwheat flour | 20011 | plant | |
millet-flour | millet flour | 20647 | plant | |
sorghum-flour | whole-grain sorghum flour | 20648 | plant | |
rye-flour | medium rye flour | 20064 | plant | | gluten (rye)
barley-flour | barley flour | 20130 | plant | | gluten (barley)
rice-white-dry | long-grain white rice, dry | 20044 | plant | |
rice-white-cooked | long-grain white rice, cooked | 20045 | plant | |
rice-brown-cooked | long-grain brown rice, cooked | 20037 | plant | |
quinoa-dry | quinoa, dry | 20035 | plant | |
quinoa-cooked | quinoa, cooked | 20137 | plant | |
bulgur-dry | bulgur, dry | 20012 | plant | wheat | gluten (wheat)
bulgur-cooked | bulgur, cooked | 20013 | plant | wheat | gluten (wheat)
couscous-dry | couscous, dry | 20028 | plant | wheat | gluten (wheat)
couscous-cooked | couscous, cooked | 20029 | plant | wheat | gluten (wheat)
millet-cooked | millet, cooked | 20032 | plant | |
wheat-bran | wheat bran | 20077 | plant | wheat | gluten (wheat)
wheat-germ | wheat germ | 20078 | plant | wheat | gluten (wheat)
crumbs-dry-plain | dry bread crumbs, plain | 18079 | cooked | wheat; milk?; soy?; sesame? | gluten (wheat); milk?; soy?; sesame?
crumbs-dry-seasoned | dry bread crumbs, seasoned | 18376 | cooked | wheat; milk?; soy?; sesame? | gluten (wheat); milk?; soy?; sesame?; celery?
bread-white | white bread, soft crumbs | 18069 | cooked | wheat; milk?; soy?; sesame? | gluten (wheat); milk?; soy?; sesame?
crackers-saltine | saltine crackers | 18228 | cooked | wheat; soy? | gluten (wheat); soy?
crackers-matzo | matzo, plain | 18217 | cooked | wheat | gluten (wheat)
melba-toast | melba toast | 18220 | cooked | wheat; sesame? | gluten (wheat); sesame?
tortilla-chips | tortilla chips, white corn, salted | 19056 | plant | |
rice-cakes | rice cakes, brown rice | 19051 | plant | sesame? | sesame?
pretzels | hard pretzels, salted | 19047 | cooked | wheat | gluten (wheat)
potato-chips | potato chips, salted | 19411 | plant | |
sunflower-seeds | sunflower kernels | 12036 | plant | |
pumpkin-seeds | pumpkin seed kernels | 12014 | plant | |
sesame-seeds | sesame seeds | 12023 | plant | sesame | sesame
flaxseed | flaxseed | 12220 | plant | |
chia-seeds | chia seeds | 12006 | plant | |
hemp-seeds | hulled hemp seed | 12012 | plant | |
tahini | tahini | 12166 | plant | sesame | sesame
almonds | almonds | 12061 | plant | tree nut (almond) | nut (almond)
walnuts | walnuts | 12155 | plant | tree nut (walnut) | nut (walnut)
cashews | cashews, raw | 12087 | plant | tree nut (cashew) | nut (cashew)
peanut-butter | peanut butter, salted | 16098 | plant | peanut | peanut
coconut-dried | dried coconut, unsweetened | 12108 | plant | | sulphite?
coconut-milk | coconut milk, canned | 12118 | plant | | sulphite?
oil-canola | canola oil | 04582 | plant | |
oil-sunflower | sunflower oil | 04506 | plant | |
oil-soybean | soybean oil | 04044 | plant | soy? | soy?
oil-corn | corn oil | 04518 | plant | |
oil-olive | olive oil | 04053 | plant | |
oil-sesame | sesame oil | 04058 | plant | sesame | sesame
oil-coconut | coconut oil | 04047 | plant | |
lard | lard | 04002 | cooked | |
mayonnaise | mayonnaise | 04025 | pasteurised | egg; soy? | egg; mustard?; soy?
mustard-yellow | yellow mustard | 02046 | plant | | mustard
mustard-ground | ground mustard seed | 02024 | plant | | mustard
catsup | tomato catsup | 11935 | plant | | celery?
soy-sauce | soy sauce (soy and wheat) | 16123 | plant | soy; wheat | soy; gluten (wheat)
tamari | tamari | 16124 | plant | soy; wheat? | soy; gluten?
miso | miso | 16112 | plant | soy; wheat? | soy; gluten?
hot-sauce | hot pepper sauce | 06168 | plant | |
vinegar-distilled | distilled vinegar | 02053 | plant | |
vinegar-cider | cider vinegar | 02048 | plant | | sulphite?
lemon-juice | lemon juice | 09152 | plant | |
lemon-peel | lemon peel | 09156 | plant | |
salt-fine | fine salt | 02047 | plant | |
sugar | granulated sugar | 19335 | plant | |
sugar-brown | brown sugar | 19334 | plant | |
honey | honey | 19296 | plant | |
maple-syrup | maple syrup | 19353 | plant | |
gelatin | unsweetened gelatin powder | 19177 | dried | |
baking-powder | baking powder, double acting | 18369 | plant | |
baking-soda | baking soda | 18372 | plant | |
yeast-dry | active dry yeast | 18375 | plant | |
water | water, tap | 14411 | plant | |
pepper-black | black pepper, ground | 02030 | plant | |
pepper-white | white pepper, ground | 02032 | plant | |
cayenne | cayenne pepper | 02031 | plant | |
paprika | paprika | 02028 | plant | |
chili-powder | chili powder | 02009 | plant | |
cumin | cumin seed | 02014 | plant | |
coriander-seed | coriander seed | 02013 | plant | |
turmeric | turmeric, ground | 02043 | plant | |
curry-powder | curry powder | 02015 | plant | | mustard?; celery?
garlic-powder | garlic powder | 02020 | plant | |
onion-powder | onion powder | 02026 | plant | |
oregano | dried oregano | 02027 | plant | |
thyme | dried thyme | 02042 | plant | |
sage | ground sage | 02038 | plant | |
rosemary | dried rosemary | 02036 | plant | |
dill-dried | dried dill weed | 02017 | plant | |
dill-fresh | fresh dill | 02045 | plant | |
parsley-fresh | fresh parsley | 11297 | plant | |
cilantro | fresh cilantro | 11165 | plant | |
basil-fresh | fresh basil | 02044 | plant | |
chives | fresh chives | 11156 | plant | |
celery-seed | celery seed | 02007 | plant | | celery
nutmeg | nutmeg, ground | 02025 | plant | |
raisins | raisins | 09298 | plant | | sulphite?
cranberries | cranberries, raw | 09078 | plant | |
apple | apple with skin, raw | 09003 | plant | |
`;

const byNumber = new Map(loadFoods().map((food) => [food.ndb, food]));
const quote = (cell) => (/[",\n#]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
const number = (value) => (value === null || value === undefined ? "" : String(value));

const rows = CHOSEN.trim()
  .split("\n")
  .map((line) => {
    const [id, name, ndb, foodClass, us, eu] = line.split("|").map((cell) => cell.trim());
    const food = byNumber.get(ndb);
    if (!food) throw new Error(`${id}: no food ${ndb} in SR28`);
    const n = food.per100G;
    const [first, second] = food.householdWeights;
    const f = food.energyFactors;
    return [
      id,
      name,
      ndb,
      foodClass,
      ...[n.waterG, n.energyKcal, n.proteinG, n.fatG, n.saturatedFatG, n.carbohydrateG, n.fibreG, n.sugarsG].map(
        number,
      ),
      ...[n.sodiumMg, n.cholesterolMg, n.ashG].map(number),
      first?.measure ?? "",
      number(first?.massG),
      second?.measure ?? "",
      number(second?.massG),
      first ? first.source : "",
      ...[f?.proteinKcalG, f?.fatKcalG, f?.carbohydrateKcalG].map(number),
      us,
      eu,
      "",
      `USDA SR28 (2015), food ${ndb}: ${food.description}`,
    ].map(quote);
  });

const file = fileURLToPath(new URL("../ingredients.csv", import.meta.url));
const headings = INGREDIENT_COLUMNS.toSpliced(3, 0, CLASS_COLUMN);
const text = `${[headings, ...rows].map((row) => row.join(",")).join("\n")}\n`;
parseIngredients(text, "ingredients.csv");
writeFileSync(`${file}.part`, text);
renameSync(`${file}.part`, file);
console.log(`${rows.length} ingredients written to data/ingredients.csv`);
